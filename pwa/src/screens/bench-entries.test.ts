import { expect, test } from "vitest";
import { benchEntry, benchMeasuring, fillBench, hasEntries } from "./bench-entries.ts";

const inch = (n: number) => ({ n, unit: "in" });

test("what is entered for one limit stays with it, and another has none of it", async () => {
  const rope = benchMeasuring("rope", 0);
  await rope.quantity("nominal", inch(0.375));
  await rope.word("where", "running");
  await rope.maker(inch(0.34));
  expect(benchEntry("rope")).toMatchObject({
    quantities: { nominal: inch(0.375) },
    words: { where: "running" },
    maker: inch(0.34),
  });
  expect(hasEntries("rope")).toBe(true);
  expect(hasEntries("thread")).toBe(false);
  await rope.maker(null);
  await rope.quantity("nominal", null);
  await rope.word("where", null);
  expect(hasEntries("rope")).toBe(false);
});

test("a text that cannot be read leaves no older value behind it", async () => {
  const press = benchMeasuring("press", 0);
  await press.quantity("bore", inch(4));
  press.unread?.("bore");
  expect(benchEntry("press").quantities).toEqual({});
  expect(benchEntry("press").unread).toEqual(["bore"]);
  await press.quantity("bore", inch(5));
  expect(benchEntry("press").unread).toEqual([]);
  expect(benchEntry("press").quantities).toEqual({ bore: inch(5) });
});

test("fields that were cleared meanwhile keep nothing more", async () => {
  const before = benchMeasuring("lift", benchEntry("lift").round);
  await before.quantity("stroke", inch(72));
  fillBench("lift");
  await before.quantity("stroke", inch(70));
  before.unread?.("stroke");
  expect(hasEntries("lift")).toBe(false);
  const after = benchMeasuring("lift", benchEntry("lift").round);
  await after.quantity("stroke", inch(70));
  expect(benchEntry("lift").quantities).toEqual({ stroke: inch(70) });
});
