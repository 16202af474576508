import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { applyArchive, exportArchive, readArchive } from "../data/archive.ts";
import { stampMs } from "../data/clock.ts";
import { current, type Store } from "../data/db.ts";
import { readDevice, readSync } from "../data/meta.ts";
import { conflicts, doc, listings, parked, pendingCount } from "../data/read.ts";
import { rowKey } from "../data/row.ts";
import { as, newStore, nextMs, texts } from "../data/testing.ts";
import { bringBack, edit, undo } from "../data/write.ts";
import { exchange } from "./exchange.ts";
import { FakeServer, json } from "./fake-server.ts";

vi.setConfig({ testTimeout: 60_000 });
const LISTING = "listing:01hzzzzzzzzzzzzzzzzzzzzzz1";
const YEAR = 365 * 86_400_000;
let server: FakeServer;
let a: Store;
let b: Store;

const set = (store: Store, path: string, value: string | number | boolean | null) =>
  as(store, () => edit("Edit", [{ doc: LISTING, path, value }]));
const value = async (store: Store, path: string) => (await as(store, () => doc(LISTING))).values.get(path);
const pending = (store: Store) => as(store, pendingCount);
const row = (store: Store, path: string) => store.rows.get(rowKey(LISTING, path));

/** Rounds until nothing is left. Tells how many it took. */
async function sync(store: Store): Promise<number> {
  for (let round = 1; round < 100; round++) if ((await exchange(store, server.fetch)).done) return round;
  throw new Error("the exchange does not come to an end");
}

async function same(): Promise<void> {
  expect(await texts(a)).toEqual(server.texts());
  expect(await texts(b)).toEqual(server.texts());
}

beforeEach(async () => {
  server = new FakeServer();
  a = await newStore();
  b = await newStore();
});
afterEach(() => vi.useRealTimers());

test("two devices end with the same bytes", async () => {
  await set(a, "title", "two post lift");
  await set(b, "asking", 240000);
  await sync(a);
  await sync(b);
  await set(b, "title", "two post lift, blue");
  await sync(b);
  await sync(a);
  await same();
  expect(await value(a, "title")).toBe("two post lift, blue");
  expect(await as(a, () => conflicts())).toEqual([]);
  expect([await pending(a), await pending(b)]).toEqual([0, 0]);
});

test("nothing changed: one round, no rows either way", async () => {
  await set(a, "title", "lift");
  await sync(a);
  server.requests.length = 0;
  expect(await sync(a)).toBe(1);
  expect(server.requests).toMatchObject([{ rows: 0 }]);
});

test("a lost answer: sent again, nothing doubled, no false conflict", async () => {
  await set(a, "title", "lift");
  server.loseAnswers = 3;
  for (let i = 0; i < 3; i++)
    await expect(exchange(a, server.fetch)).rejects.toMatchObject({ kind: "offline" });
  expect(await pending(a)).toBe(1);
  await sync(a);
  await sync(b);
  await same();
  expect(server.row(LISTING, "title")?.entries).toHaveLength(1);
});

test("a lost answer, then the field is edited again: no conflict with oneself, same device id", async () => {
  await set(b, "title", "from b");
  await sync(b);
  await sync(a);
  const { id } = await readDevice(a);
  await set(a, "title", "first");
  server.loseAnswers = 1;
  await expect(exchange(a, server.fetch)).rejects.toThrow();
  await set(a, "title", "second");
  await sync(a);
  await sync(b);
  await same();
  expect(server.row(LISTING, "title")?.entries).toMatchObject([{ value: "second" }]);
  expect((await readDevice(a)).id).toBe(id);
});

test("edits made while a push is under way are still pending afterwards", async () => {
  await set(a, "title", "lift");
  const round = exchange(a, async (url, init) => {
    await set(a, "title", "lift, blue");
    return server.fetch(url, init);
  });
  await round;
  expect(await pending(a)).toBe(1);
  await sync(a);
  expect(server.row(LISTING, "title")?.entries).toMatchObject([{ value: "lift, blue" }]);
  expect(await pending(a)).toBe(0);
});

test("edits made apart: both see the other value, bringing it back settles it for both", async () => {
  await set(a, "title", "from a");
  await nextMs();
  await set(b, "title", "from b");
  for (const store of [a, b, a]) await sync(store);
  await same();
  for (const store of [a, b]) {
    const found = await as(store, () => conflicts(LISTING));
    expect(found).toMatchObject([{ winner: { value: "from b" }, losers: [{ value: "from a" }] }]);
  }
  const loser = (await as(a, () => conflicts()))[0]?.losers[0];
  await as(a, () => bringBack(LISTING, "title", loser?.stamp ?? ""));
  await sync(a);
  await sync(b);
  await same();
  expect(await value(b, "title")).toBe("from a");
  expect(await as(b, () => conflicts())).toEqual([]);
});

test("one deletes, the other edits: deleted everywhere, and the edit is pointed out", async () => {
  await set(a, "title", "lift");
  await sync(a);
  await sync(b);
  await set(a, "deleted", true);
  await nextMs();
  await set(b, "note", "call him on Monday");
  for (const store of [a, b, a]) await sync(store);
  await same();
  const [found] = await as(a, () => listings({ deleted: true }));
  expect(found).toMatchObject({ deleted: true, changedAfterDelete: true });
});

describe("clock", () => {
  test("a year ahead: refused, restamped in order, sent; the other device is not dragged along", async () => {
    vi.useFakeTimers({ toFake: ["Date"], now: 2_000_000_000_000 });
    const real = Date.now();
    server.now = () => real;
    await set(b, "title", "from b");
    await sync(b);
    await sync(a);
    vi.setSystemTime(real + YEAR);
    for (const path of ["maker", "model", "title", "place"]) await set(a, path, `${path} from a`);
    // Tried without an answer first: the stamps that were sent must not outrank the new ones.
    await expect(exchange(a, () => Promise.reject(new TypeError("offline")))).rejects.toThrow();
    await set(a, "maker", "maker from a, again");
    const answers = [];
    for (let i = 0; i < 3; i++) answers.push(await exchange(a, server.fetch));
    expect(answers[0]).toMatchObject({ done: false, again: true, notice: expect.stringContaining("ahead") });
    expect(answers.at(-1)?.done).toBe(true);
    await sync(b);
    await same();
    const stamps = await Promise.all(
      ["model", "title", "place", "maker"].map(async (p) => (await row(a, p))?.own ?? ""),
    );
    expect([...stamps].sort()).toEqual(stamps);
    for (const stamp of stamps) expect(stampMs(stamp)).toBeLessThanOrEqual(real + 60_000);
    expect(await value(b, "maker")).toBe("maker from a, again");
    expect(await as(b, () => conflicts())).toEqual([]);
    expect(await pending(a)).toBe(0);
    // Offline from now on the offset is kept, and undo still knows its values.
    await set(a, "seller", "private");
    expect(stampMs((await row(a, "seller"))?.own ?? "")).toBeLessThan(real + 60_000);
    expect(await as(a, undo)).toMatchObject({ undone: 1 });
    expect(await as(a, undo)).toMatchObject({ undone: 1, kept: [] });
    expect(await value(a, "maker")).toBe("maker from a");
  });

  test("set back a year, then forward: accepted, later edits win, nothing is lost", async () => {
    vi.useFakeTimers({ toFake: ["Date"], now: 2_000_000_000_000 });
    const real = Date.now();
    server.now = () => real;
    await set(b, "title", "from b");
    await sync(b);
    vi.setSystemTime(real - YEAR);
    await set(a, "title", "old clock");
    await sync(a);
    expect((await readDevice(a)).offset).toBe(YEAR);
    expect(await value(a, "title")).toBe("from b");
    expect(await as(a, () => conflicts())).toMatchObject([{ losers: [{ value: "old clock" }] }]);
    await set(a, "title", "after seeing b");
    expect(stampMs((await row(a, "title"))?.own ?? "")).toBeGreaterThanOrEqual(real);
    vi.setSystemTime(real);
    await set(a, "title", "clock right again");
    await sync(a);
    await sync(b);
    await same();
    expect(await value(b, "title")).toBe("clock right again");
    expect(await as(b, () => conflicts())).toEqual([]);
  });
});

describe("a second device with the same id", () => {
  /** What restoring a phone's backup onto another phone does. */
  async function cloned(): Promise<void> {
    await set(a, "title", "lift");
    await sync(a);
    for (const row of await a.meta.toArray()) await b.meta.put(row);
    for (const row of await a.rows.toArray()) await b.rows.put(row);
  }

  test("takes a new id, and both devices' values are kept", async () => {
    await cloned();
    await set(a, "note", "from a");
    await sync(a);
    await nextMs();
    await set(b, "note", "from the copy");
    await sync(b);
    await sync(a);
    await same();
    expect((await readDevice(a)).id).not.toBe((await readDevice(b)).id);
    const [conflict] = await as(a, () => conflicts());
    expect([conflict?.winner.value, conflict?.losers[0]?.value]).toEqual(["from the copy", "from a"]);
    expect(await pending(b)).toBe(0);
  });

  test("same stamp, other value: both are kept", async () => {
    vi.useFakeTimers({ toFake: ["Date"], now: Date.now() + 1000 });
    await cloned();
    await set(a, "note", "from a");
    await set(b, "note", "from the copy");
    expect((await row(a, "note"))?.own).toBe((await row(b, "note"))?.own);
    await sync(a);
    await sync(b);
    await sync(a);
    await same();
    const [conflict] = await as(a, () => conflicts());
    expect([conflict?.winner.value, conflict?.losers[0]?.value].sort()).toEqual(["from a", "from the copy"]);
  });
});

test("a server set back to an older backup gets everything again", async () => {
  await set(a, "title", "lift");
  await sync(a);
  await sync(b);
  const backup = server.backup();
  await set(a, "asking", 240000);
  await set(b, "maker", "invented");
  for (const store of [a, b, a]) await sync(store);
  server.restore(backup);
  expect(server.row(LISTING, "asking")).toBeUndefined();
  await set(b, "model", "M1");
  for (const store of [b, a, b]) await sync(store);
  await same();
  expect(server.row(LISTING, "asking")?.entries).toMatchObject([{ value: 240000 }]);
  expect((await readSync(b)).repush).toBeNull();
});

test("a repush goes on page by page after a cut", async () => {
  await as(a, () =>
    edit(
      "Many",
      Array.from({ length: 450 }, (_, i) => ({
        doc: "book",
        path: `part/p${i}`,
        value: { low: i, likely: i, high: i },
      })),
    ),
  );
  await sync(a);
  server.restore(new FakeServer().backup());
  await exchange(a, server.fetch);
  await exchange(a, server.fetch);
  const through = (await readSync(a)).repush;
  expect(through).toMatch(/^book\|part\/p/);
  await expect(exchange(a, () => Promise.reject(new TypeError("cut")))).rejects.toThrow();
  expect((await readSync(a)).repush).toBe(through);
  await sync(a);
  expect(await texts(a)).toEqual(server.texts());
  expect((await readSync(a)).repush).toBeNull();
});

test("own edits wait their turn during a repush and stay counted", async () => {
  const parts = (from: number, to: number) =>
    Array.from({ length: to - from }, (_, i) => ({
      doc: "book",
      path: `part/p${1000 + from + i}`,
      value: from,
    }));
  await as(a, () => edit("Many", parts(0, 300)));
  await sync(a);
  server.restore(new FakeServer().backup());
  await exchange(a, server.fetch);
  await as(a, () => edit("Last by name, first in time", parts(300, 320)));
  await as(a, () => edit("First by name, last in time", [{ doc: "book", path: "part/a", value: 1 }]));
  await exchange(a, server.fetch);
  expect(await pending(a)).toBe(21);
  await sync(a);
  expect(await pending(a)).toBe(0);
  expect(server.texts()).toEqual(await texts(a));
});

test("an import in the middle of a repush begins it anew, so that no imported row is passed over", async () => {
  await set(a, "title", "lift");
  await as(b, () => edit("Early", [{ doc: "book", path: "part/a", value: { low: 1, likely: 1, high: 1 } }]));
  const { blob } = await as(b, exportArchive);
  await sync(a);
  server.restore(new FakeServer().backup());
  await exchange(a, server.fetch);
  await exchange(a, async (url, init) => {
    const answer = await server.fetch(url, init);
    await as(a, async () => applyArchive(await readArchive(blob)));
    return answer;
  });
  expect((await readSync(a)).repush).toBe("");
  await sync(a);
  expect(server.texts()).toEqual(await texts(a));
  expect(server.texts()).toHaveLength(2);
});

test("a restarted server goes on from the cursor", async () => {
  await set(a, "title", "lift");
  await sync(a);
  server.restart();
  server.requests.length = 0;
  await sync(a);
  expect((await readSync(a)).repush).toBeNull();
  expect(server.requests).toMatchObject([{ rows: 0 }]);
});

test("a refused entry is set aside and shown, the other 999 go on, and a new value is sent again", async () => {
  await as(a, () =>
    edit(
      "Many",
      Array.from({ length: 1000 }, (_, i) => ({ doc: LISTING, path: `fact/f${i}`, value: `v${i}` })),
    ),
  );
  server.refuse.set(rowKey(LISTING, "fact/f500"), "no such fact");
  await sync(a);
  expect(server.texts()).toHaveLength(999);
  expect(await as(a, parked)).toMatchObject([{ path: "fact/f500", reason: "no such fact" }]);
  expect([await pending(a), await value(a, "fact/f500")]).toEqual([0, "v500"]);
  server.refuse.clear();
  await set(a, "fact/f500", "better");
  expect(await as(a, parked)).toEqual([]);
  await sync(a);
  await sync(b);
  await same();
});

test("a push the server will not read at all is narrowed down to the one row", async () => {
  for (const path of ["title", "maker", "model", "place", "seller"]) await set(a, path, `${path} x`);
  const fetcher: typeof server.fetch = async (url, init) =>
    String(init?.body).includes("model x")
      ? json(413, { code: "too-large", message: "too large" })
      : server.fetch(url, init);
  for (let round = 0; round < 20; round++) if ((await exchange(a, fetcher)).done) break;
  expect(await as(a, parked)).toMatchObject([{ path: "model", reason: "too large" }]);
  expect(server.texts()).toHaveLength(4);
  expect(await pending(a)).toBe(0);
});

test("a server that reads nothing of this app sets no row aside", async () => {
  for (const path of ["title", "maker", "model"]) await set(a, path, path);
  server.instead = () => json(422, { code: "field", message: "want: too large" });
  await expect(exchange(a, server.fetch)).rejects.toMatchObject({ kind: "garbled" });
  expect([await pending(a), await as(a, parked)]).toEqual([3, []]);
});

describe("not our server", () => {
  const page = () => new Response("<html>log in</html>", { headers: { "content-type": "text/html" } });
  const cases: [string, () => Response, string][] = [
    ["a captive portal's page with 200", page, "offline"],
    [
      "JSON without our mark",
      () => new Response("{}", { headers: { "content-type": "application/json" } }),
      "offline",
    ],
    [
      "our mark on a page",
      () => new Response("x", { headers: { "content-type": "text/html", asfound: "1" } }),
      "offline",
    ],
    [
      "JSON cut off",
      () => new Response('{"now":', { headers: { "content-type": "application/json", asfound: "1" } }),
      "offline",
    ],
    ["an answer without a cursor", () => json(200, { now: 1, rows: [] }), "garbled"],
    ["a list", () => json(200, []), "garbled"],
    ["an unknown conflict", () => json(409, { code: "other", message: "no" }), "conflict"],
    ["unpaired", () => json(401, { code: "unpaired", message: "pair" }), "unpaired"],
    ["a full disk", () => json(507, { code: "disk-full", message: "full" }), "fault"],
    ["a fault", () => json(500, { code: "fault", message: "oops" }), "fault"],
    ["busy", () => new Response("", { status: 503, headers: { "retry-after": "7" } }), "busy"],
  ];
  test.each(cases)("%s: nothing is marked as sent", async (_, answer, kind) => {
    await set(a, "title", "lift");
    server.instead = answer;
    await expect(exchange(a, server.fetch)).rejects.toMatchObject({ kind });
    expect(await pending(a)).toBe(1);
    expect((await readSync(a)).contact).toBe(0);
    server.instead = undefined;
    await sync(a);
    expect(server.texts()).toHaveLength(1);
  });
});

test("a row that does not read is left out, the rest of the page is taken", async () => {
  await set(a, "title", "lift");
  await sync(a);
  const fetcher: typeof server.fetch = async (url, init) => {
    const body = await (await server.fetch(url, init)).json();
    return json(200, { ...body, rows: [{ doc: "x" }, ...body.rows, null] });
  };
  await exchange(b, fetcher);
  expect(await value(b, "title")).toBe("lift");
});

test("the first sync of a new device goes on after a cut, at most one page sent again", async () => {
  await as(a, () =>
    edit(
      "Many",
      Array.from({ length: 500 }, (_, i) => ({ doc: LISTING, path: `fact/f${i}`, value: "x" })),
    ),
  );
  await sync(a);
  server.pageRows = 50;
  let got = 0;
  for (let turn = 0; turn < 40; turn++) {
    if (turn % 2 === 1) server.loseAnswers = 1;
    const done = await exchange(b, server.fetch)
      .then((round) => round.done)
      .catch(() => false);
    const now = await b.rows.count();
    expect(now - got).toBeLessThanOrEqual(50);
    got = now;
    if (done) break;
  }
  expect(await texts(b)).toEqual(server.texts());
  expect(server.requests.length).toBeLessThanOrEqual(22);
});

test("an imported archive of a device that is gone reaches the server whole", async () => {
  await set(a, "title", "lift");
  const { blob } = await as(a, exportArchive);
  const c = await newStore();
  await applyArchive(await readArchive(blob));
  expect(current()).toBe(c);
  await sync(c);
  expect(server.texts()).toEqual(await texts(a));
});

test("random edits, cuts and orders on three devices: all end with the same bytes", async () => {
  const c = await newStore();
  const stores = [a, b, c];
  let seed = 7;
  const random = (n: number) => {
    seed = (seed * 1103515245 + 12345) % 2147483648;
    return Math.floor((seed / 2147483648) * n);
  };
  for (let step = 0; step < 250; step++) {
    const store = stores[random(3)] as Store;
    const act = random(10);
    if (act < 6) await set(store, `fact/f${random(5)}`, `v${step}`);
    else if (act === 6) await as(store, undo);
    else if (act === 7) server.loseAnswers = 1;
    else await exchange(store, server.fetch).catch(() => undefined);
    if (step === 120) server.restore(server.backup());
  }
  server.loseAnswers = 0;
  for (let round = 0; round < 3; round++) for (const store of stores) await sync(store);
  await same();
  expect(await texts(c)).toEqual(server.texts());
  for (const store of stores) expect(await pending(store)).toBe(0);
});
