import * as fc from "fast-check";
import { expect, test } from "vitest";
import type { Check } from "../generated/types.ts";
import { comparable, matrix, spread } from "./rubric-pairs.ts";

const check = (id: string, safety: number) => ({ id, weight: { safety, condition: 0 } }) as Check;

test("the heaviest are compared, those that count for nothing are not", () => {
  const checks = [check("a", 1), check("b", 0), check("c", 9), check("d", 4)];
  expect(comparable(checks, "safety", 2).map((c) => c.id)).toEqual(["c", "d"]);
  expect(comparable(checks, "condition", 2)).toEqual([]);
});

test("an answer is the inverse of itself seen from the other side", () => {
  const a = matrix(
    ["a", "b", "c"],
    new Map([
      ["a/b", 3],
      ["b/c", -5],
    ]),
  );
  expect(a).toEqual([
    [1, 3, 1],
    [1 / 3, 1, 1 / 5],
    [1, 5, 1],
  ]);
});

test("weights are whole, at least 1, keep the total and the order of the shares", () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 1, max: 100 }), { minLength: 2, maxLength: 9 }),
      fc.integer({ min: 0, max: 300 }),
      (raw, extra) => {
        const sum = raw.reduce((a, b) => a + b, 0);
        const shares = raw.map((x) => x / sum);
        const total = raw.length + extra;
        const weights = spread(total, shares);
        expect(weights.reduce((a, b) => a + b, 0)).toBe(total);
        for (const [i, w] of weights.entries()) {
          expect(w).toBeGreaterThanOrEqual(1);
          for (const [j, v] of weights.entries()) {
            if ((shares[i] ?? 0) > (shares[j] ?? 0)) expect(w).toBeGreaterThanOrEqual(v);
          }
        }
      },
    ),
  );
});
