import fc from "fast-check";
import { expect, test } from "vitest";
import type { ListingSummary } from "../data/read.ts";
import { addressOf, findListings, folded, narrows, nothingAsked, readAsk, SORTS } from "./find-listings.ts";

let born = 0;
function listing(told: Partial<ListingSummary>): ListingSummary {
  const id = `0${++born}`;
  return {
    id,
    doc: `listing:${id}`,
    title: "",
    away: false,
    answered: 0,
    deleted: false,
    changedAfterDelete: false,
    conflicts: 0,
    changed: 0,
    judged: "",
    ...told,
  };
}
const kinds: Record<string, string> = { lift: "Two-post lift", lathe: "Engine lathe" };
const known = {
  kindOf: (one: ListingSummary) => kinds[one.rubric?.id ?? ""] ?? "",
  miles: { mi: 1, km: 0.62 },
};
const find = (all: ListingSummary[], ask: Partial<typeof nothingAsked>) =>
  findListings(all, { ...nothingAsked, ...ask }, known);
const titles = (all: ListingSummary[], ask: Partial<typeof nothingAsked>) =>
  find(all, ask).listings.map((one) => one.title);

test.each([
  ["a title, whatever the case", { title: "Grey LIFT" }, "grey lift"],
  ["an accent left out", { title: "Élévateur à l'Écluse" }, "elevateur ecluse"],
  ["an accent put in", { title: "Elevador" }, "elevadór"],
  ["letters that carry no accent", { place: "Große Straße, Łódź, Ærø" }, "grosse strasse lodz aero"],
  ["a Turkish i", { title: "ILGIN İŞ" }, "ilgin is"],
  ["full-width letters", { title: "ＬＩＦＴ" }, "lift"],
  ["a maker and a model in one search", { maker: "Invented Works", model: "M 9/2" }, "works m9"],
  ["a serial number without its dashes", { serial: "AB-123.45" }, "ab12345"],
  ["a serial number with spaces", { serial: "AB-123.45" }, "AB 123 45"],
  ["the kind", { rubric: { id: "lift", version: 1 } }, "two-post"],
  ["the note", { note: "Ask for the key at the gate" }, "key gate"],
  ["Arabic", { title: "مصعد سيارات" }, "سيارات"],
  ["an emoji", { title: "lift 🔧" }, "🔧"],
  ["markup as plain text", { title: "<script>alert(1)</script>" }, "<script>"],
])("finds %s", (_, told, q) => {
  const other = listing({ title: "press", changed: 9 });
  const one = listing(told);
  expect(find([other, one], { q }).listings).toEqual([one]);
});

test("every word must stand in it; spaces alone ask for nothing", () => {
  const all = [listing({ title: "grey lift" }), listing({ title: "red lift" })];
  expect(titles(all, { q: "lift grey" })).toEqual(["grey lift"]);
  expect(titles(all, { q: "lift blue" })).toEqual([]);
  expect(titles(all, { q: "  " })).toHaveLength(2);
  expect(narrows({ ...nothingAsked, q: "  " })).toBe(false);
});

test("what the walkaround tells is a state until something else is said", () => {
  const all = [
    listing({ title: "a" }),
    listing({ title: "b", answered: 3 }),
    listing({ title: "c", answered: 3, state: "bought" }),
    listing({ title: "d", state: "offered" }),
    listing({ title: "e", state: "of a later version" }),
    listing({ title: "f", state: "bought", away: true }),
  ];
  expect(titles(all, { state: "to-look" }).sort()).toEqual(["a", "e"]);
  expect(titles(all, { state: "looked" })).toEqual(["b"]);
  expect(titles(all, { state: "bought" })).toEqual(["c"]);
  expect(titles(all, { state: "away" })).toEqual(["f"]);
  const { states, all: shown, away } = find(all, { state: "bought" });
  expect(Object.fromEntries(states)).toEqual({
    "": 5,
    "to-look": 2,
    looked: 1,
    offered: 1,
    bought: 1,
    away: 1,
  });
  expect([shown, away]).toEqual([5, 1]);
});

test("those put away are out of the list, and counted where the question would find them", () => {
  const all = [
    listing({ title: "lift a", away: true }),
    listing({ title: "lift b" }),
    listing({ title: "x", away: true }),
  ];
  expect(titles(all, {})).toEqual(["lift b"]);
  expect(find(all, { q: "lift" }).away).toBe(1);
  expect(find(all, { q: "lift", state: "away" }).away).toBe(0);
  expect(titles(all, { q: "lift", state: "away" })).toEqual(["lift a"]);
});

test("places are one, however they are written, and the counts tell what a choice would leave", () => {
  const lift = { id: "lift", version: 1 };
  const all = [
    listing({ place: "Río Seco", rubric: lift }),
    listing({ place: "rio  seco " }),
    listing({ place: "Mill Lane", rubric: lift }),
    listing({}),
  ];
  const found = find(all, { kind: "lift" });
  expect(Object.fromEntries(found.kinds)).toEqual({ lift: 2, "": 2 });
  expect([...found.places]).toEqual([
    ["rio seco", { title: "Río Seco", count: 1 }],
    ["mill lane", { title: "Mill Lane", count: 1 }],
  ]);
  expect(find(all, { place: "rio seco" }).listings).toHaveLength(2);
});

test("orders: what is not told comes last", () => {
  const all = [
    listing({ title: "lift 10", asking: 200, distance: { n: 10, unit: "km" }, made: 1990, changed: 1 }),
    listing({ title: "Lift 9", asking: 300, distance: { n: 8, unit: "mi" }, made: 2010, changed: 2 }),
    listing({ title: "", changed: 3 }),
    listing({ title: "älter", asking: 0, distance: { n: 1, unit: "furlong" }, changed: 4 }),
  ];
  expect(titles(all, { sort: "touched" })).toEqual(["älter", "", "Lift 9", "lift 10"]);
  expect(titles(all, { sort: "asking" })).toEqual(["älter", "lift 10", "Lift 9", ""]);
  expect(titles(all, { sort: "distance" })).toEqual(["lift 10", "Lift 9", "älter", ""]);
  expect(titles(all, { sort: "made" })).toEqual(["Lift 9", "lift 10", "älter", ""]);
  expect(titles(all, { sort: "name" })).toEqual(["älter", "Lift 9", "lift 10", ""]);
});

test("an address reads back as what was asked, and nonsense in it asks for nothing", () => {
  const ask = fc.record({
    q: fc.string({ unit: "grapheme", maxLength: 20 }),
    kind: fc.constantFrom("", "two-post-lift"),
    place: fc.string({ maxLength: 10 }).map(folded),
    state: fc.constantFrom("" as const, "to-look" as const, "bought" as const, "away" as const),
    sort: fc.constantFrom(...SORTS),
  });
  fc.assert(
    fc.property(ask, (one) => {
      const url = new URL(addressOf(one), "http://localhost");
      expect(readAsk(Object.fromEntries(url.searchParams))).toEqual({ ...one, q: one.q.slice(0, 200) });
    }),
  );
  expect(addressOf(nothingAsked)).toBe("/");
  expect(readAsk({ state: "sold!", sort: "<b>", other: "x" })).toEqual(nothingAsked);
});

test("any order is one order: the same listings come out, however they went in", () => {
  const one = fc.record({
    title: fc.string({ maxLength: 3 }),
    asking: fc.option(fc.nat(3), { nil: undefined }),
    made: fc.option(fc.integer({ min: 1990, max: 1992 }), { nil: undefined }),
    changed: fc.nat(2),
  });
  fc.assert(
    fc.property(fc.array(one, { maxLength: 8 }), fc.constantFrom(...SORTS), (list, sort) => {
      const all = list.map((told) => listing(told as Partial<ListingSummary>));
      const there = find(all, { sort }).listings.map((l) => l.id);
      expect(find([...all].reverse(), { sort }).listings.map((l) => l.id)).toEqual(there);
      expect([...there].sort()).toEqual(all.map((l) => l.id).sort());
    }),
  );
});
