import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  axisLabels,
  linear,
  niceDomain,
  niceSpan,
  niceStep,
  niceTicks,
  onDimension,
  textWidth,
  within,
} from "./scale.ts";

describe("linear", () => {
  it("maps the ends and the middle, also upside down", () => {
    const y = linear([0, 1], [200, 20]);
    expect([y(0), y(0.5), y(1)]).toEqual([200, 110, 20]);
  });
  it("gives a number for a domain of no width", () => {
    expect(linear([7, 7], [10, 90])(7)).toBe(10);
  });
});

describe("niceStep and niceTicks", () => {
  it.each([
    [100, 5, 20],
    [100, 4, 25],
    [0.3, 3, 0.1],
    [7, 5, 2],
    [423_000, 4, 200_000],
  ])("cuts %d in at most %d pieces by %d", (span, count, step) => {
    expect(niceStep(span, count)).toBeCloseTo(step, 10);
  });
  it("writes round values without tails", () => {
    expect(niceTicks(0, 0.3, 3)).toEqual([0, 0.1, 0.2, 0.3]);
    expect(niceTicks(-130, 260, 4)).toEqual([-100, 0, 100, 200]);
    expect(niceTicks(5, 5, 4)).toEqual([5]);
    expect(niceTicks(9, 1, 4)).toEqual([]);
    expect(niceTicks(Number.NaN, 1, 4)).toEqual([]);
  });
  it("stays inside, ascends and is never crowded", () => {
    const money = fc.integer({ min: -1e11, max: 1e11 });
    fc.assert(
      fc.property(money, money, fc.integer({ min: 1, max: 9 }), (a, b, count) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const ticks = niceTicks(low, high, count);
        const slack = (high - low) * 1e-6 + 1e-6;
        expect(ticks.length).toBeLessThanOrEqual(count + 1);
        for (const [i, t] of ticks.entries()) {
          expect(t).toBeGreaterThanOrEqual(low - slack);
          expect(t).toBeLessThanOrEqual(high + slack);
          if (i > 0) expect(t).toBeGreaterThan(ticks[i - 1] ?? 0);
        }
      }),
    );
  });
});

describe("niceDomain", () => {
  it("holds zero and every value, also below zero", () => {
    expect(niceDomain([120, 430], 4)).toEqual([0, 600]);
    expect(niceDomain([-130, 260], 4)).toEqual([-200, 300]);
    expect(niceDomain([], 4)).toEqual([0, 1]);
    expect(niceDomain([Number.NaN, 0], 4)).toEqual([0, 1]);
  });
});

describe("niceSpan", () => {
  it("ends on round numbers around the values, zero or not", () => {
    expect(niceSpan([1_730, 3_120], 5)).toEqual([1_500, 3_500]);
    expect(niceSpan([200, 430], 4)).toEqual([200, 500]);
    expect(niceSpan([], 4)).toEqual([0, 1]);
    expect(niceSpan([Number.NaN], 4)).toEqual([0, 1]);
  });
  it("has a width even for one value, and holds whatever it is given", () => {
    const money = fc.array(fc.integer({ min: 0, max: 1e11 }), { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(money, fc.integer({ min: 1, max: 9 }), (all, count) => {
        const [low, high] = niceSpan(all, count);
        expect(low).toBeLessThan(high);
        expect(low).toBeLessThanOrEqual(Math.min(...all) * (1 + 1e-9) + 1e-6);
        expect(high).toBeGreaterThanOrEqual(Math.max(...all) * (1 - 1e-9) - 1e-6);
      }),
    );
  });
});

describe("labels", () => {
  it("are pushed inside the paper", () => {
    expect(within(5, 40, 0, 300)).toBe(0);
    expect(within(295, 40, 0, 300)).toBe(260);
    expect(within(150, 40, 0, 300)).toBe(130);
  });
  it("never touch each other or leave the paper on a narrow axis", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e11 }), fc.integer({ min: 120, max: 600 }), (high, wide) => {
        const at = linear([0, high], [8, wide - 12]);
        const breadth = (t: number) => textWidth(String(t), 14);
        const kept = axisLabels(niceTicks(0, high, 6), at, breadth, [0, wide], 8);
        expect(kept.length).toBeGreaterThan(0);
        for (const [i, { tick, middle }] of kept.entries()) {
          expect(middle - breadth(tick) / 2).toBeGreaterThanOrEqual(-1e-9);
          const before = kept[i - 1];
          if (!before) continue;
          const room = middle - breadth(tick) / 2 - (before.middle + breadth(before.tick) / 2);
          expect(room).toBeGreaterThanOrEqual(8 - 1e-9);
        }
      }),
    );
  });
  it("of a dimension stand on its line, or beyond its end when the line is short", () => {
    expect(onDimension(40, 240, 100, 320)).toEqual({ x: 90, inside: true });
    expect(onDimension(40, 90, 100, 320)).toEqual({ x: 98, inside: false });
    expect(onDimension(40, 130, 160, 280)).toEqual({ x: 120, inside: false });
  });
  it("count combining marks as nothing and wide scripts as wide", () => {
    expect(textWidth("e\u0301", 10)).toBe(textWidth("e", 10));
    expect(textWidth("重", 10)).toBeGreaterThan(textWidth("a", 10));
  });
});
