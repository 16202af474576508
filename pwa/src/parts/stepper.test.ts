import { expect, test } from "vitest";
import { nextMark } from "./stepper.tsx";

const marks = [5, 10, 15, 30];

test("a step goes to the nearest mark, from a mark or from between", () => {
  expect([nextMark(10, marks, true), nextMark(10, marks, false)]).toEqual([15, 5]);
  expect([nextMark(12, marks, true), nextMark(12, marks, false)]).toEqual([15, 10]);
});

test("beyond the last mark there is no step", () => {
  expect([nextMark(30, marks, true), nextMark(5, marks, false)]).toEqual([undefined, undefined]);
  expect([nextMark(90, marks, false), nextMark(1, marks, true)]).toEqual([30, 5]);
});
