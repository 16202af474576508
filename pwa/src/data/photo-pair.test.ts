import { expect, test } from "vitest";
import { pairOf, pathsOfPhoto, standingPairs } from "./photo-pair.ts";
import type { Json } from "./value.ts";

const [a, b, c] = ["a", "b", "c"].map((letter) => letter.repeat(64)) as [string, string, string];

test("a pair is two different photos", () => {
  expect(pairOf({ before: a, after: b })).toEqual({ before: a, after: b });
  for (const value of [
    null,
    "x",
    { before: a },
    { before: a, after: a },
    { before: a, after: "" },
  ] as Json[]) {
    expect(pairOf(value)).toBeUndefined();
  }
});

test("a pair stands while both its photos do", () => {
  const pairs = [
    { before: a, after: b },
    { before: b, after: c },
  ];
  expect(standingPairs(pairs, [a, b])).toEqual([pairs[0]]);
});

test("with a photo go its marks and its pairs, and nothing of the same photo elsewhere", () => {
  const values = new Map<string, Json>(
    Object.entries({
      [`photo/${a}`]: {},
      [`photo/${a}/marks`]: { shapes: [] },
      [`finding/x/photo/${a}`]: {},
      [`finding/x/photo/${a}/marks`]: { shapes: [] },
      [`finding/x/photo/${b}/marks`]: { shapes: [] },
      "finding/x/pair/1": { before: b, after: a },
      "finding/x/pair/2": { before: b, after: c },
      "finding/y/pair/1": { before: a, after: b },
    }),
  );
  expect(pathsOfPhoto(values, `finding/x/photo/${a}`)).toEqual([
    `finding/x/photo/${a}`,
    `finding/x/photo/${a}/marks`,
    "finding/x/pair/1",
  ]);
  expect(pathsOfPhoto(values, `photo/${a}`)).toEqual([`photo/${a}`, `photo/${a}/marks`]);
});
