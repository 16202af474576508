import { expect, test } from "vitest";
import { nextOpen, type Stop } from "./use-walk.ts";

const stops = (marks: string) =>
  [...marks].map((mark, i) => ({ check: { id: `c${i}` }, open: mark === "o" }) as Stop);
const next = (marks: string, after: string | undefined) => nextOpen(stops(marks), after)?.check.id;

test("the next open check lies ahead, else round from the start", () => {
  expect(next("x.o.o", undefined)).toBe("c2");
  expect(next("x.o.o", "c2")).toBe("c4");
  expect(next("o...x", "c4")).toBe("c0");
});

test("the check one stands on is not its own next", () => {
  expect(next("..o..", "c2")).toBeUndefined();
  expect(next(".....", "c1")).toBeUndefined();
});
