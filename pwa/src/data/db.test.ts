import Dexie from "dexie";
import { IDBFactory, IDBKeyRange } from "fake-indexeddb";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { current, type DataState, onDataState, openData, type Store, useStore } from "./db.ts";
import { asDataError, DataError } from "./error.ts";
import { doc } from "./read.ts";
import { keepStorage, storageState } from "./storage.ts";
import { newStore } from "./testing.ts";
import { edit } from "./write.ts";

const set = (value: string) => edit("Edit", [{ doc: "shop", path: "currency", value }]);
const currency = async () => (await doc("shop")).values.get("currency");

beforeEach(() => {
  Object.assign(Dexie.dependencies, { indexedDB: new IDBFactory(), IDBKeyRange });
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

test("opens, keeps, and finds it again", async () => {
  expect(await openData("first")).toEqual({ mode: "stored" });
  await set("EUR");
  current().close();
  await openData("first");
  expect(await currency()).toBe("EUR");
});

test("a browser that keeps nothing: works in memory and says so", async () => {
  Object.assign(Dexie.dependencies, { indexedDB: undefined });
  const state = await openData("second");
  expect(state.mode).toBe("memory");
  expect(state.problem?.message).toContain("save a backup file");
  await set("EUR");
  expect(await currency()).toBe("EUR");
  expect(await storageState()).toMatchObject({ mode: "memory", problem: expect.stringContaining("backup") });
});

test("a newer app in another tab: this one closes, says to reload, and never claims to have saved", async () => {
  const states: DataState[] = [];
  await openData("third");
  const off = onDataState((state) => states.push(state));
  const newer = new Dexie("third");
  newer.version(3).stores({ more: "id" });
  await newer.open();
  off();
  expect(states.at(-1)).toMatchObject({ mode: "closed", problem: { code: "outdated" } });
  await expect(set("EUR")).rejects.toMatchObject({ code: "outdated" });
  newer.close();
});

test("a transaction that fails once for a lost connection is done again, twice is reported", async () => {
  const store = await newStore();
  const lost = () => {
    throw new DOMException("Connection to Indexed Database server lost", "UnknownError");
  };
  const get = vi.spyOn(store.rows, "bulkGet").mockImplementationOnce(lost);
  await set("EUR");
  expect(await currency()).toBe("EUR");
  get.mockImplementation(lost);
  await expect(set("USD")).rejects.toMatchObject({
    code: "lost",
    message: expect.stringContaining("reload"),
  });
  get.mockRestore();
  expect(await currency()).toBe("EUR");
});

test("a transaction that hangs is given up", async () => {
  const store = await newStore();
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
  const hanging = store
    .write(["meta"], () => new Promise<void>(() => undefined))
    .catch((error: unknown) => error);
  await vi.advanceTimersByTimeAsync(21_000);
  vi.useRealTimers();
  expect(await hanging).toMatchObject({ code: "stuck" });
});

test("before the store is open, using it is a clear error", async () => {
  useStore(undefined as unknown as Store);
  expect(() => current()).toThrow(DataError);
});

test.each([
  [new DOMException("x", "QuotaExceededError"), "quota"],
  [{ name: "AbortError", inner: new DOMException("x", "QuotaExceededError") }, "quota"],
  [new DOMException("x", "InvalidStateError"), "lost"],
  [new DOMException("x", "SecurityError"), "unavailable"],
  [new TypeError("x"), "unknown"],
  ["a text", "unknown"],
])("%s becomes %s", (cause, code) => expect(asDataError(cause).code).toBe(code));

test("the browser is asked to keep the data once, after the first save", async () => {
  const persist = vi.fn(async () => true);
  vi.stubGlobal("navigator", {
    storage: { persist, persisted: async () => true, estimate: async () => ({ usage: 85, quota: 100 }) },
  });
  await openData("fourth");
  const stop = keepStorage();
  expect(persist).not.toHaveBeenCalled();
  await set("EUR");
  await set("USD");
  stop();
  expect(persist).toHaveBeenCalledTimes(1);
  expect(await storageState()).toEqual({
    mode: "stored",
    persisted: true,
    usage: 85,
    quota: 100,
    nearlyFull: true,
    emptied: false,
  });
});

test("an emptied store is told from a new one by the cookie", async () => {
  vi.stubGlobal("document", { cookie: "" });
  await openData("fifth");
  expect((await storageState()).emptied).toBe(false);
  const stop = keepStorage();
  await set("EUR");
  stop();
  expect(document.cookie).toContain("asfound_kept=1");
  vi.stubGlobal("document", { cookie: "a=b; asfound_kept=1" });
  expect((await storageState()).emptied).toBe(false);
  await current().rows.clear();
  expect((await storageState()).emptied).toBe(true);
});
