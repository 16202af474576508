import { beforeEach, expect, test } from "vitest";
import type { Comparison, Side } from "../generated/types.ts";
import { decide, decisionOf, decisions, MOST_REASON, plainly, withdraw } from "./decision.ts";
import { doc } from "./read.ts";
import { newStore } from "./testing.ts";
import { byteLength, canonical, type Json, MAX_VALUE_BYTES } from "./value.ts";
import { edit, lastUndo } from "./write.ts";

beforeEach(async () => {
  await newStore();
});

const listingId = (n: number) => `01hzzzzzzzzzzzzzzzzzzzzzz${n}`;

const side = (letter: string, more: Partial<Side> = {}): Side => ({
  letter,
  title: `Lift ${letter}`,
  verdict: {
    code: "not-proven",
    title: "Not proven",
    sentence: "One.",
    hazard: "warning",
    points: [],
    always: ["x"],
  },
  safety: { value: 80, low: 60, high: 90, coverage: 70, checked: 7, applies: 10 },
  condition: { value: null, low: 0, high: 100, coverage: 0, checked: 0, applies: 10 },
  price: 2_150_00,
  odds: 0.4,
  ahead: -100_00,
  ahead_low: -900_00,
  ahead_high: 700_00,
  all_in: { price: 2_150_00, tax: 0, fees: 0, landing: 1, repair: 2, hidden: 3, total: 2_150_06 },
  opening: null,
  fair: { price: 1_500_00, odds: 0.75, none: false },
  walk_away: { price: 2_000_00, odds: 0.5, none: false },
  hours: 12.5,
  days: { low: 2, likely: 5, high: 11, steps: ["a"] },
  distance: { n: 12, unit: "mi" },
  hides: 300_00,
  open: 3,
  dearest: [{ check: "c", title: "Cables", chance: 0.2, remedy: "r", mean: 200_00 }],
  rubric: { id: "two-post-lift", version: 3 },
  gate: "",
  score: 51.2,
  parts: [0.5, null],
  ...more,
});

const comparison = (...sides: Side[]): Comparison => ({
  currency: "USD",
  sides,
  better: [],
  overtake: [],
  order: sides.map((_, i) => i).reverse(),
  criteria: [{ id: "ahead", title: "Coming out ahead", scale: "s", weight: 40 }],
  moves: [],
  sentences: ["A is the better buy."],
});

const given = {
  date: "2026-03-31",
  chosen: listingId(1),
  price: 2_150_00,
  reason: "nearer, and its owner showed it running",
  acknowledged: "",
  program: "abc",
};

test("a decision keeps its day, tells the listings, and nothing takes it back unseen", async () => {
  const listings = [
    { id: listingId(0), asked: 900_00 },
    { id: listingId(1), asked: 2_400_00 },
  ];
  const states = [
    { id: listingId(1), state: "bought" as const },
    { id: listingId(0), state: "let-go" as const },
  ];
  const id = await decide("Decision", given, comparison(side("A"), side("B")), listings, states);
  const before = await decisions();
  expect(before.unread).toBe(0);
  expect(before.decisions).toHaveLength(1);
  const [kept] = before.decisions;
  expect(kept).toMatchObject({ ...given, id, currency: "USD", withdrawn: undefined });
  expect(kept?.sides.map((s) => [s.letter, s.id, s.asked])).toEqual([
    ["B", listingId(1), 2_400_00],
    ["A", listingId(0), 900_00],
  ]);
  expect((await doc(`listing:${listingId(1)}`)).values.get("state")).toEqual({
    state: "bought",
    at: kept?.made,
  });
  expect((await doc(`listing:${listingId(0)}`)).values.get("state")).toEqual({
    state: "let-go",
    at: kept?.made,
  });
  expect(await lastUndo()).toBeUndefined();

  await edit("Title", [{ doc: `listing:${listingId(1)}`, path: "title", value: "Another" }]);
  expect((await decisions()).decisions).toEqual(before.decisions);
  await withdraw("Withdraw", id);
  const [after] = (await decisions()).decisions;
  expect(after?.withdrawn).toMatch(/^\d{4}-/);
  expect({ ...after, withdrawn: undefined }).toEqual(kept);
});

test("eight listings with the longest titles fit into one value", async () => {
  const long = "🔧".repeat(300);
  const points = Array.from({ length: 60 }, (_, i) => ({
    check: `check-${i}`,
    title: "A point with a title of the usual length of a title",
    hazard: "danger",
    grade: null,
  }));
  const sides = [..."ABCDEFGH"].map((letter) =>
    side(letter, {
      title: long,
      verdict: { ...side(letter).verdict, points, sentence: "s".repeat(300) },
      days: { low: 1, likely: 2, high: 3, steps: ["s".repeat(600)] },
    }),
  );
  const all = { ...comparison(...sides), sentences: Array.from({ length: 12 }, () => long) };
  const reason = "🔧".repeat(MOST_REASON);
  const listings = sides.map((_, i) => ({ id: listingId(i), asked: undefined }));
  const id = await decide("Decision", { ...given, reason, acknowledged: reason }, all, listings, []);
  const value = (await doc("decisions")).values.get(`item/${id}`) as Json;
  expect(byteLength(canonical(value))).toBeLessThan(MAX_VALUE_BYTES);
  expect((await decisions()).decisions[0]?.sides).toHaveLength(8);
});

test("what is damaged or newer is counted and not shown by halves", async () => {
  const id = await decide(
    "D",
    given,
    comparison(side("A"), side("B")),
    [
      { id: listingId(0), asked: 1 },
      { id: listingId(1), asked: 2 },
    ],
    [],
  );
  const good = (await doc("decisions")).values.get(`item/${id}`) as { [key: string]: Json };
  expect(decisionOf("x", good, undefined)).toBeDefined();
  const sides = good.sides as { [key: string]: Json }[];
  for (const bad of [
    null,
    "text",
    { ...good, version: 2 },
    { ...good, sides: [] },
    { ...good, currency: "dollars" },
    { ...good, sides: [{ ...sides[0], days: "soon" }] },
    { ...good, sides: [{ ...sides[0], walk_away: { price: "much", none: false, odds: 1 } }] },
    { ...good, sides: [{ ...sides[0], dearest: [7] }] },
    { ...good, sides: [null] },
    { ...good, reason: 7 },
  ] as Json[])
    expect(decisionOf("x", bad, undefined)).toBeUndefined();
  await edit("bad", [{ doc: "decisions", path: "item/bad", value: { version: 9 } }]);
  const all = await decisions();
  expect([all.decisions.length, all.unread]).toEqual([1, 1]);
});

test("what must be said plainly of a purchase", () => {
  const of = (more: Partial<Side>, price = 1_900_00) => {
    const { parts: _, verdict, ...figures } = side("A", more);
    const { always: __, points: ___, ...said } = verdict;
    return plainly({ ...figures, id: "x", asked: null, verdict: { ...said, points: [], count: 0 } }, price);
  };
  expect(of({ open: 0 })).toEqual([]);
  expect(of({ open: 0 }, 2_000_00)).toEqual([]);
  expect(of({ open: 0 }, 2_000_01)).toEqual(["above"]);
  expect(of({ open: 2 })).toEqual(["unproven"]);
  expect(of({ open: 0, gate: "do-not-use" })).toEqual(["barred"]);
  expect(of({ open: 0, walk_away: null })).toEqual(["no-worth"]);
  expect(of({ open: 0, walk_away: { price: 0, odds: 0.5, none: true } }, 0)).toEqual(["not-even-a-gift"]);
  const verdict = { ...side("A").verdict, code: "repair-first" };
  expect(of({ open: 1, verdict }, 9_000_00)).toEqual(["repair", "unproven", "above"]);
});
