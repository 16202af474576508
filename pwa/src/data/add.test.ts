import { beforeEach, expect, test } from "vitest";
import { addAbsent } from "./add.ts";
import { current } from "./db.ts";
import { doc, pendingCount } from "./read.ts";
import { newStore } from "./testing.ts";
import { edit, lastUndo, onSave, undo } from "./write.ts";

beforeEach(async () => {
  await newStore();
});

const item = (i: number) => ({
  doc: "comparables",
  path: `item/c${String(i).padStart(5, "0")}`,
  value: { kind: "press", title: `press ${i}`, price: i, basis: "sold" },
});
const items = (n: number) => Array.from({ length: n }, (_, i) => item(i));

test("thousands are added in parts, told of, sent later and taken back as one step", async () => {
  const told: number[] = [];
  let saves = 0;
  const stop = onSave(() => saves++);
  expect(await addAbsent("Import", items(2000), (n) => told.push(n))).toEqual({ added: 2000, there: 0 });
  stop();
  expect(told).toEqual([250, 500, 750, 1000, 1250, 1500, 1750, 2000]);
  expect(saves).toBe(1);
  expect((await doc("comparables")).values.size).toBe(2000);
  expect(await pendingCount()).toBe(2000);
  expect((await lastUndo())?.label).toBe("Import");
  expect(await undo()).toEqual({ label: "Import", undone: 2000, kept: [] });
  expect((await doc("comparables")).values.size).toBe(0);
  expect(await lastUndo()).toBeUndefined();
});

test("the same ones again add nothing, change nothing and leave no step", async () => {
  await addAbsent("Import", items(3));
  await edit("Comparable", [
    { ...item(1), value: { kind: "press", title: "mine", price: 5, basis: "asked" } },
  ]);
  const before = await lastUndo();
  expect(await addAbsent("Import again", items(4))).toEqual({ added: 1, there: 3 });
  expect((await doc("comparables")).values.get(item(1).path)).toMatchObject({ title: "mine" });
  expect(await addAbsent("Import once more", items(4))).toEqual({ added: 0, there: 4 });
  expect(before?.label).toBe("Comparable");
  expect((await lastUndo())?.label).toBe("Import again");
});

test("one that was removed comes back, and one given twice counts once", async () => {
  await addAbsent("Import", items(2));
  await edit("Removed", [{ doc: "comparables", path: item(0).path, value: null }]);
  expect(await addAbsent("Import", [...items(2), item(0)])).toEqual({ added: 1, there: 2 });
  expect((await doc("comparables")).values.size).toBe(2);
});

test("one bad value and nothing is added at all", async () => {
  const bad = [...items(600), { ...item(700), path: "Item/X" }];
  await expect(addAbsent("Import", bad)).rejects.toThrow(/names no field/);
  expect(await current().rows.count()).toBe(0);
});

test("an undo in the middle leaves the later ones their own step", async () => {
  const adding = addAbsent("Import", items(500), (n) => {
    if (n === 250) void undo();
  });
  expect(await adding).toEqual({ added: 500, there: 0 });
  await undo();
  expect((await doc("comparables")).values.size).toBe(0);
});
