import Dexie from "dexie";
import { IDBFactory, IDBKeyRange } from "fake-indexeddb";
import fc from "fast-check";
import { beforeEach, expect, test } from "vitest";
import { absorb } from "./absorb.ts";
import { Store, stored, useStore } from "./db.ts";
import { headOf, rowsOf } from "./head.ts";
import { listingDoc } from "./id.ts";
import { lift, readDevice } from "./meta.ts";
import { listings } from "./read.ts";
import { stampsOf } from "./row.ts";
import { as, newStore } from "./testing.ts";
import type { JsonInput } from "./value.ts";
import { edit, undo } from "./write.ts";

const docs = ["01hzzzzzzzzzzzzzzzzzzzzzz1", "01hzzzzzzzzzzzzzzzzzzzzzz2"].map(listingDoc);
const A = docs[0] as string;
const hash = (n: number) => String(n).repeat(64);

beforeEach(async () => {
  await newStore();
});

/** Every head as it is kept, and as the rows give it anew. */
async function both(store: Store) {
  const kept = await store.heads.toArray();
  const anew = [];
  for (const doc of docs) {
    const head = headOf(doc, await rowsOf(store, doc));
    if (head) anew.push(head);
  }
  return { kept, anew };
}

async function sendAll(from: Store, to: Store): Promise<void> {
  const rows = await from.rows.toArray();
  await to.write(["rows", "meta", "heads"], async () => {
    const device = await readDevice(to);
    await absorb(to, rows, device.id);
    await to.meta.put(lift(device, stampsOf(rows)));
  });
}

const path = fc.constantFrom(
  "title",
  "asking",
  "deleted",
  "away",
  "state",
  "rubric",
  `photo/${hash(1)}`,
  `photo/${hash(2)}`,
  `photo/${hash(2)}/marks`,
  "finding/arms/answer",
  "finding/arms/note",
);
const value: fc.Arbitrary<JsonInput> = fc.oneof(
  fc.constant(null),
  fc.boolean(),
  fc.string({ maxLength: 5 }),
  fc.integer({ min: 0, max: 9 }),
  fc.constant({ at: "2026-01-01T00:00:00Z" }),
  fc.constant({ state: "bought", at: "2026-01-01T00:00:00Z" }),
  fc.constant({ id: "two-post-lift", version: 3 }),
);
const step = fc.oneof(
  { weight: 6, arbitrary: fc.record({ on: fc.nat(1), doc: fc.constantFrom(...docs), path, value }) },
  { weight: 1, arbitrary: fc.record({ undo: fc.nat(1) }) },
  { weight: 2, arbitrary: fc.record({ from: fc.nat(1) }) },
);

test("what is kept of a listing is what its rows give, whatever was edited, undone or fetched", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step, { maxLength: 14 }), async (steps) => {
      const stores = [await newStore(), await newStore()] as const;
      for (const one of steps) {
        if ("undo" in one) await as(stores[one.undo === 0 ? 0 : 1], undo);
        else if ("from" in one) await sendAll(stores[one.from === 0 ? 0 : 1], stores[one.from === 0 ? 1 : 0]);
        else
          await as(stores[one.on === 0 ? 0 : 1], () =>
            edit("Edit", [{ doc: one.doc, path: one.path, value: one.value }]),
          );
      }
      for (const store of stores) {
        const { kept, anew } = await both(store);
        expect(kept).toEqual(anew);
      }
    }),
    { numRuns: 60 },
  );
}, 60_000);

test("the oldest photo of the whole stands on the card, never marks drawn on one", async () => {
  const photo = (at: string) => ({ at, width: 1, height: 1 });
  await edit("Photos", [
    { doc: A, path: `photo/${hash(1)}`, value: photo("2026-02-02T00:00:00Z") },
    { doc: A, path: `photo/${hash(2)}`, value: photo("2026-01-01T00:00:00Z") },
    { doc: A, path: `photo/${hash(0)}/marks`, value: [] },
    { doc: A, path: `finding/arms/photo/${hash(0)}`, value: photo("2025-01-01T00:00:00Z") },
  ]);
  expect((await listings())[0]?.photo).toBe(hash(2));
});

test("a listing whose making is undone is gone from the list", async () => {
  await edit("New listing", [{ doc: A, path: "title", value: "lift" }]);
  expect(await listings()).toHaveLength(1);
  await undo();
  expect(await listings()).toEqual([]);
});

test("records of the version before get their heads when they are opened", async () => {
  const indexedDB = new IDBFactory();
  Object.assign(Dexie.dependencies, { indexedDB, IDBKeyRange });
  const before = new Dexie("older", { indexedDB, IDBKeyRange });
  before.version(1).stores({
    rows: "key, doc, path, own, losers",
    meta: "key",
    photos: "hash, uploaded",
    images: "hash",
    undo: "++id",
    parked: "key, row",
  });
  await before.open();
  const device = "00000000000000aa";
  const entry = (value: string) => ({ value, stamp: `${"0".repeat(11)}10000${device}`, base: "" });
  const row = (doc: string, path: string, value: string) =>
    stored({ doc, path, entries: [entry(value)], seen: [] }, device);
  await before
    .table("rows")
    .bulkPut([row(A, "title", "lift"), row(A, "place", "Mill Lane"), row("shop", "currency", "EUR")]);
  before.close();
  const now = useStore(new Store("older", { indexedDB, IDBKeyRange }));
  await now.open();
  expect(await listings()).toMatchObject([{ doc: A, title: "lift", place: "Mill Lane" }]);
  expect(await now.heads.count()).toBe(1);
});

test("a seller's look at a deleted listing's paper does not bring it back; his answer does", async () => {
  const head = async () => (await listings({ deleted: true }))[0];
  const arrives = (path: string, value: JsonInput) => edit("", [{ doc: A, path, value }]);
  await edit("New", [{ doc: A, path: "title", value: "lift" }]);
  await edit("Delete", [{ doc: A, path: "deleted", value: true }]);
  const before = await head();
  await arrives("link/01jzzzzzzzzzzzzzzzzzzzzzz1/opened", { first: "", last: "", count: 1 });
  expect(await head()).toEqual(before);
  await arrives("link/01jzzzzzzzzzzzzzzzzzzzzzz1/answer/pads", { says: "done", word: "", at: "" });
  expect(await head()).toMatchObject({ deleted: true, changedAfterDelete: true });
});
