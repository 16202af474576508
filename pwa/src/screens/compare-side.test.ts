import { expect, test } from "vitest";
import type { Comparison, Side } from "../generated/types.ts";
import { catchingUp, inOrder } from "./compare-side.ts";

const side = (title: string, gate = "", letter = ""): Side => ({
  letter,
  title,
  verdict: { code: gate, title: "", sentence: "", hazard: "notice", points: [], always: [] },
  safety: { value: null, low: 0, high: 100, coverage: 0, checked: 0, applies: 1 },
  condition: { value: null, low: 0, high: 100, coverage: 0, checked: 0, applies: 1 },
  price: null,
  odds: null,
  ahead: null,
  ahead_low: null,
  ahead_high: null,
  all_in: null,
  opening: null,
  fair: null,
  walk_away: null,
  hours: 0,
  days: { low: 0, likely: 0, high: 0, steps: [] },
  open: 0,
  dearest: [],
  rubric: { id: "lift", version: 1 },
  distance: null,
  hides: 0,
  gate,
  score: null,
  parts: [],
});

const comparison: Comparison = {
  currency: "USD",
  sides: [side("lift", "", "A"), side("press", "", "B"), side("lathe", "do-not-use", "C")],
  better: [
    [null, 0.3, 0.9],
    [0.7, null, 0.4],
    [0.1, 0.6, null],
  ],
  overtake: [
    [null, 120_000, 300_000],
    [250_000, null, -1],
    [50_000, 90_000, null],
  ],
  order: [1, 0, 2],
  criteria: [],
  moves: [],
  sentences: [],
};

test("letters go by the order chosen, places by the ranking", () => {
  const sides = inOrder(comparison, ["id-a", "id-b", "id-c"]);
  expect(sides.map((s) => [s.letter, s.id, s.side.title])).toEqual([
    ["B", "id-b", "press"],
    ["A", "id-a", "lift"],
    ["C", "id-c", "lathe"],
  ]);
});

test("one without a price is told where it would be level", () => {
  const [lift, press, lathe] = comparison.sides as [Side, Side, Side];
  const unpriced: Comparison = {
    ...comparison,
    sides: [{ ...lift, price: 100 }, press, lathe],
    better: [
      [null, null],
      [null, null],
    ],
    overtake: [
      [null, null],
      [180_000, null],
    ],
    order: [0, 1],
  };
  const pairs = catchingUp(unpriced, inOrder(unpriced, ["id-a", "id-b"]));
  expect(pairs.map((p) => `${p.behind.letter} to ${p.ahead.letter} at ${p.price}`)).toEqual([
    "B to A at 180000",
  ]);
});

test("only the likely worse of a pair catches up, and what must not be used has no part in it", () => {
  const pairs = catchingUp(comparison, inOrder(comparison, ["id-a", "id-b", "id-c"]));
  expect(pairs.map((p) => `${p.behind.letter} to ${p.ahead.letter} at ${p.price}`)).toEqual([
    "A to B at 120000",
  ]);
});
