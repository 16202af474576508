import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { current } from "./db.ts";
import { noteUnsaved, redoUnsaved, type Unsaved } from "./journal.ts";
import { newStore } from "./testing.ts";

/** A page that is gone: its notes stay, its lock does not. */
const DEAD = "00000000deadbeef";
const KEY = `asfound-unsaved/${DEAD}/000000001`;
const edit: Unsaved = {
  label: "Grade",
  changes: [{ doc: "shop", path: "currency", value: "EUR" }],
  options: {},
};

let granted: Promise<unknown>[] = [];

/** A start of the app, until what was left behind is done. */
async function start(redo: (edit: Unsaved) => Promise<void>): Promise<void> {
  await redoUnsaved(current(), redo);
  await Promise.all(granted);
}

beforeEach(async () => {
  const kept = new Map<string, string>();
  const storage = {
    getItem: (k: string) => kept.get(k) ?? null,
    setItem: (k: string, v: string) => {
      Object.assign(storage, { [k]: v });
      kept.set(k, v);
    },
    removeItem: (k: string) => {
      Reflect.deleteProperty(storage, k);
      kept.delete(k);
    },
  };
  for (const hidden of ["getItem", "setItem", "removeItem"]) {
    Object.defineProperty(storage, hidden, { enumerable: false });
  }
  vi.stubGlobal("localStorage", storage);
  granted = [];
  const request = (name: string, work: () => Promise<unknown>) => {
    // The page's own lock is held for good; a lock of a page that is gone is granted.
    if (name.includes(DEAD)) granted.push(work());
    return new Promise(() => undefined);
  };
  vi.stubGlobal("navigator", { locks: { request } });
  await newStore();
});
afterEach(() => vi.unstubAllGlobals());

describe("edits noted before they are stored", () => {
  test("an edit that a closed page left behind is done once", async () => {
    localStorage.setItem(KEY, JSON.stringify(edit));
    const done: Unsaved[] = [];
    const redo = async (e: Unsaved) => void done.push(e);
    await start(redo);
    await start(redo);
    expect(done).toEqual([edit]);
  });

  test("an edit that was stored, only its note was left, is not done again", async () => {
    localStorage.setItem(KEY, JSON.stringify(edit));
    await current().meta.put({ key: `page:${DEAD}`, stored: 1 });
    const redo = vi.fn(async () => undefined);
    await start(redo);
    expect(redo).not.toHaveBeenCalled();
    expect(localStorage.getItem(KEY)).toBeNull();
    expect(await current().meta.get(`page:${DEAD}`)).toBeUndefined();
  });

  test("a redo that fails keeps its note for the next start", async () => {
    localStorage.setItem(KEY, JSON.stringify(edit));
    await start(() => Promise.reject(new Error("storage is busy")));
    expect(localStorage.getItem(KEY)).not.toBeNull();
  });

  test("a note is dropped once its edit is decided", () => {
    const note = noteUnsaved(edit);
    expect(Object.keys(localStorage)).toHaveLength(1);
    note.drop();
    expect(Object.keys(localStorage)).toHaveLength(0);
  });
});
