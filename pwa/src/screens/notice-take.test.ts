import { expect, test } from "vitest";
import type { Json } from "../data/value.ts";
import type { Proposal } from "../generated/types.ts";
import { agrees, proposedValue, takeable, toldBy, unconfirmed } from "./notice-take.ts";

const said = { sure: "plain", because: "it says so", start: 0, end: 1, before: "", words: "x", after: "" };
const asked: Proposal = { ...said, field: "asking", cents: 240_000 };
const was: Proposal = { ...said, field: "asking", cents: 300_000, sure: "doubtful" };
const size: Proposal = { ...said, field: "capacity", quantity: { n: 9000, unit: "lb" } };
const year: Proposal = { ...said, field: "made", number: 2009, sure: "doubtful" };
const place: Proposal = { ...said, field: "place", text: "Quarry Hill" };
const kind: Proposal = { ...said, field: "rubric", text: "two-post-lift", title: "Two-post lift" };
const euros: Proposal = { ...said, field: "asking", cents: 100, foreign: "EUR" };

const values = (all: Record<string, Json>) => new Map(Object.entries(all));

test("a proposal's value is what the listing keeps", () => {
  expect([asked, size, year, place].map(proposedValue)).toEqual([
    240_000,
    { n: 9000, unit: "lb" },
    2009,
    "Quarry Hill",
  ]);
});

test("proposals stand by field, in their order, without the kind", () => {
  const all = toldBy([kind, asked, was, size], values({}));
  expect(all.map((t) => [t.path, t.proposals.length])).toEqual([
    ["asking", 2],
    ["capacity", 1],
  ]);
});

test("all at one tap fills what is empty, and only with what is not doubtful", () => {
  const paths = (proposals: Proposal[], now: Record<string, Json>) =>
    takeable(toldBy(proposals, values(now))).map(({ told, proposal }) => [
      told.path,
      proposedValue(proposal),
    ]);
  expect(paths([asked, was, size, year], {})).toEqual([
    ["asking", 240_000],
    ["capacity", { n: 9000, unit: "lb" }],
  ]);
  expect(paths([asked, place], { asking: 1, place: "" })).toEqual([["place", "Quarry Hill"]]);
  expect(paths([euros], {})).toEqual([]);
  // Two that are as sure: somebody must choose.
  expect(paths([asked, { ...was, sure: "plain" }], {})).toEqual([]);
});

test("what stands as any reading has it needs no confirming", () => {
  const all = toldBy([asked, was, size], values({ asking: 300_000, capacity: { unit: "lb", n: 10_000 } }));
  const [price] = all;
  if (!price) throw new Error("no price");
  expect([agrees(price, asked), agrees(price, was)]).toEqual([false, true]);
  expect(unconfirmed(all).map((t) => t.path)).toEqual(["capacity"]);
});
