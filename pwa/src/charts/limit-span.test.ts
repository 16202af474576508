import fc from "fast-check";
import { expect, test } from "vitest";
import { limitSpan, passedSide } from "./limit-span.ts";

test("a scale starts at zero where value and limit stand apart on it", () => {
  expect(limitSpan(6.13, 5)).toEqual([0, 8]);
  expect(limitSpan(0, 5)).toEqual([0, 6]);
  expect(limitSpan(-2, 5)).toEqual([-4, 6]);
});

test("it comes closer where a scale from zero would lay one upon the other", () => {
  expect(limitSpan(2010, 1998)).toEqual([1990, 2020]);
  expect(limitSpan(66.8, 80)).toEqual([0, 100]);
  const [from, to] = limitSpan(150, 150);
  expect(from).toBeLessThan(150);
  expect(to).toBeGreaterThan(150);
});

test("whatever is held against each other lies on the scale", () => {
  const figure = fc
    .tuple(fc.integer({ min: -1_000_000, max: 1_000_000 }), fc.integer({ min: -6, max: 4 }))
    .map(([digits, power]) => digits * 10 ** power);
  fc.assert(
    fc.property(figure, figure, (value, limit) => {
      const [from, to] = limitSpan(value, limit);
      expect(from).toBeLessThan(to);
      const hair = (to - from) * 1e-6;
      for (const n of [value, limit]) {
        expect(n).toBeGreaterThanOrEqual(from - hair);
        expect(n).toBeLessThanOrEqual(to + hair);
      }
    }),
  );
});

test("the side on which a limit is passed is read from the finding, never guessed", () => {
  expect(passedSide(6, 5, "beyond limit")).toBe(1);
  expect(passedSide(3, 5, "beyond limit")).toBe(-1);
  expect(passedSide(3, 5, "within limit")).toBe(1);
  expect(passedSide(6, 5, "within limit")).toBe(-1);
  expect(passedSide(6, 5, "watch")).toBe(0);
  expect(passedSide(5, 5, "within limit")).toBe(0);
});
