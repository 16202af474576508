import { afterEach, beforeEach, expect, test, vi } from "vitest";
import type { Store } from "../data/db.ts";
import { addPhoto, type Shrunk } from "../data/photo.ts";
import { newStore, png, texts } from "../data/testing.ts";
import { edit } from "../data/write.ts";
import { FakeServer, json } from "./fake-server.ts";
import { onSyncStatus, resetSync, type SyncStatus, startSync, syncNow, syncStatus } from "./sync.ts";
import { waitAfter } from "./wait.ts";

const set = (path: string, value: string) => edit("Edit", [{ doc: "shop", path, value }]);
const asIs = async (file: Blob): Promise<Shrunk> => ({
  data: await file.arrayBuffer(),
  type: "image/png",
  width: 40,
  height: 30,
});
let server: FakeServer;
let store: Store;
vi.setConfig({ testTimeout: 30_000 });
let stop: () => void = () => undefined;

beforeEach(async () => {
  server = new FakeServer();
  store = await newStore();
  await resetSync(server.fetch);
});
afterEach(async () => {
  stop();
  vi.useRealTimers();
  vi.restoreAllMocks();
  await resetSync(server.fetch);
});

test("saved here, then on the server, counted from the data", async () => {
  await set("currency", "USD");
  await addPhoto(new Blob([png(40, 30, 500)]), asIs);
  server.instead = () => new Response("<html>", { headers: { "content-type": "text/html" } });
  expect(await syncNow()).toMatchObject({
    phase: "saved-here",
    pending: 1,
    photosPending: 1,
    serverSeen: false,
  });
  expect(syncStatus()).not.toHaveProperty("problem");
  server.instead = undefined;
  expect(await syncNow()).toMatchObject({
    phase: "on-server",
    pending: 0,
    photosPending: 0,
    serverSeen: true,
    busy: false,
  });
  expect(await texts(store)).toEqual(server.texts());
  server.instead = () => json(500, { code: "fault", message: "oops" });
  await set("currency", "EUR");
  expect(await syncNow()).toMatchObject({
    phase: "waiting",
    pending: 1,
    problem: expect.stringContaining("500"),
  });
  server.instead = undefined;
  expect(await syncNow()).not.toHaveProperty("problem");
});

test("entries go before photos, and an entry saved meanwhile goes before the next chunk", async () => {
  await addPhoto(new Blob([png(40, 30, 900_000)]), asIs);
  await set("currency", "USD");
  let saved = false;
  await resetSync(async (url, init) => {
    if (!saved && init?.method === "PUT") {
      saved = true;
      await set("units", "metric");
    }
    return server.fetch(url, init);
  });
  stop = startSync();
  await vi.waitFor(() => expect(server.texts()).toHaveLength(2), { timeout: 20_000 });
  await vi.waitFor(() => expect(syncStatus().phase).toBe("on-server"), { timeout: 20_000 });
  const order = server.requests.map((r) =>
    r.url === "/api/sync" ? `rows ${r.rows}` : r.url.endsWith("/have") ? "have" : "chunk",
  );
  expect(order.slice(0, 4)).toEqual(["rows 1", "have", "chunk", "rows 1"]);
});

test("a save is sent by itself after two seconds", async () => {
  stop = startSync();
  await vi.waitFor(() => expect(server.requests).toHaveLength(1), { timeout: 10_000 });
  const before = Date.now();
  await set("currency", "USD");
  await vi.waitFor(() => expect(server.texts()).toHaveLength(1), { timeout: 4000 });
  expect(Date.now() - before).toBeGreaterThan(1900);
});

test("after a failure it is tried again within a minute with no new save", async () => {
  vi.spyOn(Math, "random").mockReturnValue(0.999);
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"], shouldAdvanceTime: true, advanceTimeDelta: 20 });
  server.instead = () => json(500, { code: "fault", message: "oops" });
  await set("currency", "USD");
  stop = startSync();
  await vi.waitFor(() => expect(syncStatus().problem).toBeDefined(), { timeout: 10_000 });
  server.instead = undefined;
  await vi.advanceTimersByTimeAsync(60_000);
  await vi.waitFor(() => expect(server.texts()).toHaveLength(1), { timeout: 10_000 });
});

test("Retry-After is obeyed, also after a save", async () => {
  server.instead = () => new Response("", { status: 503, headers: { "retry-after": "3" } });
  stop = startSync();
  await vi.waitFor(() => expect(syncStatus().problem).toContain("busy"), { timeout: 10_000 });
  const asked = server.requests.length;
  server.instead = undefined;
  await set("currency", "USD");
  await new Promise((resolve) => setTimeout(resolve, 2400));
  expect(server.requests.length).toBe(asked);
  await vi.waitFor(() => expect(server.texts()).toHaveLength(1), { timeout: 3000 });
});

test("a device whose times are refused for ever gives up this try and says so", async () => {
  await set("currency", "USD");
  server.instead = () => json(409, { code: "clock-ahead", now: 1_000, message: "ahead" });
  expect(await syncNow()).toMatchObject({ problem: expect.stringContaining("clock"), pending: 1 });
  expect(server.requests.length).toBeLessThan(10);
});

test("a listener hears the state at once and each change", async () => {
  const heard: SyncStatus[] = [];
  const off = onSyncStatus((status) => heard.push(status));
  expect(heard).toHaveLength(1);
  await syncNow();
  off();
  expect(heard.some((status) => status.busy)).toBe(true);
  expect(heard.at(-1)).toMatchObject({ busy: false, serverSeen: true });
});

test("waits grow to five minutes and are spread", () => {
  const longest = Array.from({ length: 10 }, (_, n) => waitAfter(n, 0.9999));
  expect(longest).toEqual([...longest].sort((x, y) => x - y));
  expect([waitAfter(0, 0), waitAfter(0, 0.9999), waitAfter(50, 0.9999)]).toEqual([
    2500,
    5000,
    expect.closeTo(300_000, -2),
  ]);
});
