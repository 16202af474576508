import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { stampMs } from "./clock.ts";
import { current, type Store, stored } from "./db.ts";
import { DataError } from "./error.ts";
import { shop } from "./file.test-data.ts";
import { loadAppraisalFile } from "./file.ts";
import { listingDoc, newId } from "./id.ts";
import { readDevice } from "./meta.ts";
import { conflicts, doc, listings, parked, pendingCount, watch } from "./read.ts";
import { merge, rowKey } from "./row.ts";
import { as, newStore, nextMs } from "./testing.ts";
import { bringBack, edit, lastUndo, onSave, settle, undo } from "./write.ts";

const LISTING = listingDoc("01hzzzzzzzzzzzzzzzzzzzzzz1");
const set = (path: string, value: Parameters<typeof edit>[1][number]["value"], label = "Edit") =>
  edit(label, [{ doc: LISTING, path, value }]);
const value = async (path: string) => (await doc(LISTING)).values.get(path);
const row = (path: string) => current().rows.get(rowKey(LISTING, path));

/** Copies a row to another device, as a sync would. */
async function carry(path: string, from: Store, to: Store): Promise<void> {
  const key = rowKey(LISTING, path);
  const theirs = await from.rows.get(key);
  if (!theirs) throw new Error("nothing to carry");
  const mine = await to.rows.get(key);
  await to.rows.put(stored(mine ? merge(mine, theirs) : theirs, (await readDevice(to)).id));
}

beforeEach(async () => {
  await newStore();
});
afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
});

test("a saved value reads back, a removed one is gone, and both are pending", async () => {
  let saves = 0;
  const stop = onSave(() => saves++);
  await edit("New listing", [
    { doc: LISTING, path: "title", value: "two post lift" },
    { doc: LISTING, path: "asking", value: 240000 },
  ]);
  await set("asking", null);
  stop();
  expect([...(await doc(LISTING)).values]).toEqual([["title", "two post lift"]]);
  expect(await pendingCount()).toBe(2);
  expect(saves).toBe(2);
});

test("an own belief and own weights reach the engine's file, and are gone when taken back", async () => {
  const file = async () => (await loadAppraisalFile(LISTING, { rubrics: [], shop })).file;
  const care = { well: 1500, ordinary: 6000, neglected: 2500 };
  await set("title", "two post lift");
  await set("care", care);
  await edit("Weight", [
    { doc: "shop", path: "weight/ahead", value: 70 },
    { doc: "shop", path: "weight/odds", value: 0 },
  ]);
  expect((await file()).care).toEqual(care);
  expect((await file()).shop).toEqual({ ...shop, weights: { ahead: 70, odds: 0 } });
  await undo();
  expect((await file()).shop).toEqual(shop);
  await set("care", null);
  expect(await file()).not.toHaveProperty("care");
});

test("saving what is there already writes nothing", async () => {
  await set("capacity", { n: 10, unit: "t" });
  const before = await row("capacity");
  await set("capacity", { unit: "t", n: 10 });
  expect(await row("capacity")).toEqual(before);
});

test("all changes of one edit are saved or none", async () => {
  const bad = edit("Edit", [
    { doc: LISTING, path: "title", value: "x" },
    { doc: LISTING, path: "Title", value: "x" },
  ]);
  await expect(bad).rejects.toThrow('"Title" names no field');
  expect((await doc(LISTING)).values.size).toBe(0);
});

test.each([
  ["Infinity", Number.POSITIVE_INFINITY, "is not a finite number"],
  ["NaN", Number.NaN, "is not a finite number"],
  ["100,000 characters", "x".repeat(100_000), "at most 64 KiB"],
  ["17 levels", JSON.parse("[".repeat(17) + "]".repeat(17)), "nested deeper"],
])("%s is refused in words that name the field", async (_, bad, words) => {
  const failed = await set("note", bad).catch((error: unknown) => error);
  expect(failed).toBeInstanceOf(DataError);
  expect((failed as DataError).message).toContain('"note"');
  expect((failed as DataError).message).toContain(words);
  expect(await value("note")).toBeUndefined();
});

test("half a character and NUL are replaced, markup stays text", async () => {
  await set("note", "a\u0000b\ud83dc <script>");
  expect(await value("note")).toBe("ab\ufffdc <script>");
});

describe("base", () => {
  test("edits before the first contact coalesce into one entry with the first base", async () => {
    for (const title of ["l", "li", "lift"]) await set("title", title);
    const entries = (await row("title"))?.entries;
    expect(entries).toHaveLength(1);
    expect(entries?.[0]).toMatchObject({ value: "lift", base: "" });
    expect(await pendingCount()).toBe(1);
  });

  test("over another device's value the base is that value, and is carried forward", async () => {
    const a = current();
    await set("title", "lift");
    const b = await newStore();
    await carry("title", a, b);
    const base = (await row("title"))?.entries[0]?.stamp;
    await set("title", "press");
    await set("title", "press, blue");
    expect((await row("title"))?.entries).toMatchObject([{ value: "press, blue", base }]);
    await carry("title", b, a);
    expect((await as(a, () => row("title")))?.losers).toBe(0);
  });

  test("what was sent without an answer is named as replaced", async () => {
    await set("title", "lift");
    const first = (await row("title"))?.own ?? "";
    const meta = {
      key: "sync",
      epoch: "",
      seq: 0,
      mark: "",
      sent: first,
      repush: null,
      repushRun: 0,
      contact: 0,
    } as const;
    await current().meta.put(meta);
    await set("title", "press");
    expect((await row("title"))?.entries[0]).toMatchObject({ base: "", settles: [first] });
  });
});

test("stamps rise though the clock is set back a year and forward again", async () => {
  vi.useFakeTimers({ toFake: ["Date"], now: Date.UTC(2031, 4, 20) });
  const seen: string[] = [];
  for (const now of [
    Date.UTC(2031, 4, 20),
    Date.UTC(2030, 4, 20),
    Date.UTC(2030, 4, 21),
    Date.UTC(2031, 4, 21),
  ]) {
    vi.setSystemTime(now);
    await set("note", `at ${now}`);
    seen.push((await row("note"))?.own ?? "");
  }
  expect([...seen].sort()).toEqual(seen);
  expect(new Set(seen).size).toBe(4);
  expect(stampMs(seen[3] ?? "")).toBe(Date.UTC(2031, 4, 21));
});

describe("concurrent edits", () => {
  async function apart(): Promise<{ a: Store; b: Store }> {
    const a = current();
    await set("title", "from a");
    await new Promise((done) => setTimeout(done, 3)); // or the devices' ids would decide
    const b = await newStore();
    await nextMs();
    await set("title", "from b");
    await carry("title", a, b);
    await carry("title", b, a);
    return { a, b };
  }

  test("the loser is kept, shown, and can be brought back on either device", async () => {
    const { a, b } = await apart();
    const [conflict] = await as(a, () => conflicts(LISTING));
    expect(conflict?.winner).toMatchObject({ value: "from b", own: false });
    expect(conflict?.losers).toMatchObject([{ value: "from a", own: true }]);
    await as(a, () => bringBack(LISTING, "title", conflict?.losers[0]?.stamp ?? ""));
    await carry("title", a, b);
    for (const store of [a, b]) {
      expect(await as(store, () => value("title"))).toBe("from a");
      expect(await as(store, () => conflicts())).toEqual([]);
    }
  });

  test("keeping the winner settles it everywhere", async () => {
    const { a, b } = await apart();
    await as(b, () => settle(LISTING, "title"));
    await carry("title", b, a);
    expect(await as(a, () => value("title"))).toBe("from b");
    expect(await as(a, () => conflicts(LISTING))).toEqual([]);
  });

  test("bringing back a value that is no longer there says so", async () => {
    await set("title", "x");
    await expect(bringBack(LISTING, "title", "f".repeat(32))).rejects.toThrow("no longer there");
  });
});

describe("undo", () => {
  test("puts back what was there, step by step", async () => {
    expect(await undo()).toBeUndefined();
    await set("title", "lift", "Title");
    await edit("Price", [
      { doc: LISTING, path: "title", value: "press" },
      { doc: LISTING, path: "asking", value: 100 },
    ]);
    expect(await lastUndo()).toMatchObject({ label: "Price" });
    expect(await undo()).toEqual({ label: "Price", undone: 2, kept: [] });
    expect([...(await doc(LISTING)).values]).toEqual([["title", "lift"]]);
    expect(await undo()).toMatchObject({ label: "Title" });
    expect((await doc(LISTING)).values.size).toBe(0);
  });

  test("leaves alone what somebody else changed since", async () => {
    const a = current();
    await set("title", "lift", "Title");
    const b = await newStore();
    await carry("title", a, b);
    await set("title", "theirs");
    await carry("title", b, a);
    expect(await as(a, undo)).toEqual({ label: "Title", undone: 0, kept: [{ doc: LISTING, path: "title" }] });
    expect(await as(a, () => value("title"))).toBe("theirs");
  });

  test("typing is one step when asked for", async () => {
    for (const note of ["a", "ab", "abc"]) {
      await edit("Note", [{ doc: LISTING, path: "note", value: note }], { coalesce: true });
    }
    expect(await undo()).toMatchObject({ undone: 1 });
    expect(await value("note")).toBeUndefined();
    expect(await lastUndo()).toBeUndefined();
  });

  test("keeps the last 50 steps", async () => {
    for (let i = 0; i < 60; i++) await set("note", `n${i}`);
    expect(await current().undo.count()).toBe(50);
  });
});

test("no room: the error says so, nothing is half saved, and the next save works", async () => {
  const store = current();
  await set("title", "lift");
  const put = vi.spyOn(store.meta, "put").mockImplementation(() => {
    throw new DOMException("full", "QuotaExceededError");
  });
  const failed = await set("title", "press").catch((error: unknown) => error);
  expect(failed).toMatchObject({ code: "quota", message: expect.stringContaining("no room") });
  put.mockRestore();
  expect(await value("title")).toBe("lift");
  await set("title", "press");
  expect(await value("title")).toBe("press");
});

test("a connection lost behind the page is opened again and the save succeeds", async () => {
  await set("title", "lift");
  current().backendDB().close();
  await set("title", "press");
  expect(await value("title")).toBe("press");
});

test("twenty edits at once get twenty stamps", async () => {
  await Promise.all(Array.from({ length: 20 }, (_, i) => set(`fact/f${i}`, "yes")));
  const owns = (await current().rows.toArray()).map((r) => r.own);
  expect(new Set(owns).size).toBe(20);
});

describe("reading", () => {
  test("listings: newest first, head fields, deleted ones on request only", async () => {
    vi.useFakeTimers({ toFake: ["Date"], now: 1_900_000_000_000 });
    const first = newId();
    const second = newId();
    const hash = "ab".repeat(32);
    await edit("New", [
      { doc: listingDoc(first), path: "title", value: "lift" },
      { doc: listingDoc(first), path: "rubric", value: { id: "two-post-lift", version: 1 } },
      { doc: listingDoc(first), path: "asking", value: "a lot" },
      {
        doc: listingDoc(first),
        path: `photo/${hash}`,
        value: { at: "2031-05-20T10:00:00Z", width: 4, height: 3 },
      },
    ]);
    vi.setSystemTime(1_900_000_001_000);
    await edit("New", [{ doc: listingDoc(second), path: "title", value: "press" }]);
    const found = await listings();
    expect(found.map((one) => one.title)).toEqual(["press", "lift"]);
    expect(found[1]).toMatchObject({
      id: first,
      photo: hash,
      conflicts: 0,
      rubric: { version: 1 },
    });
    expect(found[1]).not.toHaveProperty("asking");
    await edit("Delete", [{ doc: listingDoc(second), path: "deleted", value: true }]);
    expect((await listings()).map((one) => one.id)).toEqual([first]);
    expect((await listings({ deleted: true }))[0]).toMatchObject({
      deleted: true,
      changedAfterDelete: false,
    });
    await edit("Note", [{ doc: listingDoc(second), path: "note", value: "wait" }]);
    expect((await listings({ deleted: true }))[0]).toMatchObject({ deleted: true, changedAfterDelete: true });
  });

  test("watch tells each change until it is stopped", async () => {
    const seen: unknown[] = [];
    const stop = watch(
      () => doc(LISTING),
      ({ values }) => seen.push(values.get("title")),
    );
    await vi.waitFor(() => expect(seen).toEqual([undefined]), { timeout: 10_000 });
    await set("title", "lift");
    await vi.waitFor(() => expect(seen).toEqual([undefined, "lift"]), { timeout: 10_000 });
    stop();
    await set("title", "press");
    await new Promise((resolve) => setTimeout(resolve, 30));
    expect(seen).toEqual([undefined, "lift"]);
  });

  test("watch tells an error and goes on", async () => {
    const errors: string[] = [];
    const seen: number[] = [];
    let broken = true;
    const query = async () => {
      if (broken) throw new DOMException("gone", "UnknownError");
      return pendingCount();
    };
    const stop = watch(
      query,
      (n) => seen.push(n),
      (error) => errors.push(error.message),
    );
    await vi.waitFor(() => expect(errors).toHaveLength(1), { timeout: 10_000 });
    broken = false;
    await vi.waitFor(() => expect(seen).toEqual([0]), { timeout: 3000 });
    stop();
    expect(await parked()).toEqual([]);
  });
});
