import { beforeEach, expect, test } from "vitest";
import type { Store } from "../data/db.ts";
import { addPhoto, checkedPhoto, photoBlob, photoPath, type Shrunk } from "../data/photo.ts";
import { checkAllPhotos, fetchAgain } from "../data/photo-proof.ts";
import { as, newStore, png } from "../data/testing.ts";
import { edit } from "../data/write.ts";
import { photoRefusedWords } from "../words/server.ts";
import { exchange } from "./exchange.ts";
import { FakeServer, json } from "./fake-server.ts";
import {
  alteredOnServer,
  CHUNK_BYTES,
  downloadPhotos,
  missingPhotos,
  photosToSend,
  uploadPhotos,
} from "./photos.ts";

const LISTING = "listing:01hzzzzzzzzzzzzzzzzzzzzzz1";
const asIs = async (file: Blob): Promise<Shrunk> => ({
  data: await file.arrayBuffer(),
  type: "image/png",
  width: 40,
  height: 30,
});
const never = () => false;
let server: FakeServer;
let store: Store;

async function photo(bytes: number): Promise<string> {
  const { hash, at } = await addPhoto(new Blob([png(40, 30, bytes)]), asIs);
  const path = photoPath(hash, "wr09");
  await edit("Photo", [{ doc: LISTING, path, value: { at, width: 40, height: 30 } }]);
  return hash;
}

const puts = () => server.requests.filter((r) => r.url.startsWith("/api/photos/") && r.bytes > 0);

beforeEach(async () => {
  server = new FakeServer();
  store = await newStore();
});

test("a photo goes up in chunks and is marked when it is whole", async () => {
  const hash = await photo(3 * CHUNK_BYTES - 100);
  expect(await photosToSend(store)).toBe(1);
  expect(await uploadPhotos(store, server.fetch, never)).toBe(true);
  expect(server.hasPhoto(hash)).toBe(true);
  expect(puts().map((r) => r.bytes)).toEqual([CHUNK_BYTES, CHUNK_BYTES, expect.any(Number)]);
  expect(await photosToSend(store)).toBe(0);
});

test("cuts: it goes on where it was, each chunk sent at most twice", async () => {
  const hash = await photo(5 * CHUNK_BYTES - 100);
  for (let turn = 0; turn < 20 && !server.hasPhoto(hash); turn++) {
    let calls = 0;
    const cutting: typeof server.fetch = async (url, init) => {
      if (++calls === 3) server.loseAnswers = 1;
      return server.fetch(url, init);
    };
    await uploadPhotos(store, cutting, never).catch(() => undefined);
  }
  await uploadPhotos(store, server.fetch, never);
  expect(await photosToSend(store)).toBe(0);
  expect(puts().length).toBeLessThanOrEqual(10);
});

test("something more urgent interrupts between chunks, and nothing is lost by it", async () => {
  const hash = await photo(3 * CHUNK_BYTES - 100);
  let asked = 0;
  expect(await uploadPhotos(store, server.fetch, () => ++asked > 2)).toBe(false);
  expect(puts()).toHaveLength(1);
  expect(await uploadPhotos(store, server.fetch, never)).toBe(true);
  expect(server.hasPhoto(hash)).toBe(true);
  expect(puts()).toHaveLength(3);
});

test("a wrong offset is answered with the right one", async () => {
  const hash = await photo(2 * CHUNK_BYTES - 100);
  const lying: typeof server.fetch = async (url, init) =>
    url.endsWith("/have") ? json(200, { have: 7, whole: false }) : server.fetch(url, init);
  expect(await uploadPhotos(store, lying, never)).toBe(true);
  expect(server.hasPhoto(hash)).toBe(true);
});

test("a refused photo is set aside with the reason, the next one goes", async () => {
  const bad = await photo(100);
  const good = await photo(200);
  const refusing: typeof server.fetch = async (url, init) =>
    init?.method === "PUT" && url.includes(bad)
      ? json(422, { code: "photo", message: "too many pixels" })
      : server.fetch(url, init);
  expect(await uploadPhotos(store, refusing, never)).toBe(true);
  expect(server.hasPhoto(good)).toBe(true);
  expect((await store.photos.get(bad))?.refused).toBe("too many pixels");
  expect(await photosToSend(store)).toBe(0);
});

test("a reason the server gives a code for is told in the app's own words", async () => {
  const bad = await photo(100);
  const refusing: typeof server.fetch = async (url, init) =>
    init?.method === "PUT"
      ? json(422, { code: "no-picture", message: "not a usable picture" })
      : server.fetch(url, init);
  expect(await uploadPhotos(store, refusing, never)).toBe(true);
  expect((await store.photos.get(bad))?.refused).toBe(photoRefusedWords.noPicture);
});

test("a server that takes nothing does not keep us for ever", async () => {
  await photo(100);
  const deaf: typeof server.fetch = async () => json(200, { have: 0, whole: false });
  await expect(uploadPhotos(store, deaf, never)).rejects.toMatchObject({ kind: "garbled" });
});

test("a second device fetches what rows name, but not of removed photos or deleted listings", async () => {
  const kept = await photo(1000);
  const removed = await photo(2000);
  await edit("Remove", [{ doc: LISTING, path: photoPath(removed, "wr09"), value: null }]);
  await exchange(store, server.fetch);
  await uploadPhotos(store, server.fetch, never);
  const other = await newStore();
  await exchange(other, server.fetch);
  expect((await missingPhotos(other)).map((one) => one.hash)).toEqual([kept]);
  await downloadPhotos(other, server.fetch, never, new Set());
  const got = await other.photos.get(kept);
  const image = await other.images.get(kept);
  expect([got?.uploaded, got?.type, new Uint8Array(image?.data ?? new ArrayBuffer())]).toEqual([
    1,
    "image/png",
    png(40, 30, 1000),
  ]);
  expect(await missingPhotos(other)).toEqual([]);
  await other.photos.clear();
  await as(other, () => edit("Delete", [{ doc: LISTING, path: "deleted", value: true }]));
  expect(await missingPhotos(other)).toEqual([]);
});

/** One bit of a kept picture turned over. */
async function alter(at: Store, hash: string): Promise<void> {
  const bytes = new Uint8Array((await at.images.get(hash))?.data ?? new ArrayBuffer());
  bytes[bytes.length - 1] = (bytes.at(-1) ?? 0) ^ 1;
  await at.images.put({ hash, data: bytes.buffer });
}

test("an altered picture is not sent, and the same photo taken in again is", async () => {
  const hash = await photo(1000);
  await alter(store, hash);
  expect(await uploadPhotos(store, server.fetch, never)).toBe(true);
  expect(server.hasPhoto(hash)).toBe(false);
  expect((await store.photos.get(hash))?.refused).toContain("not the one that was recorded");
  expect(await photo(1000)).toBe(hash);
  expect(await checkedPhoto(hash)).toMatchObject({ state: "whole" });
  await uploadPhotos(store, server.fetch, never);
  expect(server.hasPhoto(hash)).toBe(true);
});

test("all photos are checked: whole, missing, altered; the altered one is fetched again", async () => {
  const [whole, altered, missing] = [await photo(1000), await photo(2000), await photo(3000)];
  await exchange(store, server.fetch);
  await uploadPhotos(store, server.fetch, never);
  await alter(store, altered);
  await store.photos.delete(missing);
  await store.images.delete(missing);
  const told: number[] = [];
  const found = await checkAllPhotos((done) => told.push(done));
  expect(told).toEqual([0, 1, 2]);
  expect(found).toEqual({
    whole: 1,
    missing: 1,
    altered: [{ hash: altered, doc: LISTING, check: "wr09", at: expect.any(String) }],
  });
  expect(await photoBlob(altered)).toBeUndefined();
  // What is whole is never given up.
  expect(await fetchAgain(whole)).toBe(false);
  expect(await fetchAgain(altered)).toBe(true);
  await downloadPhotos(store, server.fetch, never, new Set());
  expect(await checkAllPhotos(() => undefined)).toEqual({ whole: 3, missing: 0, altered: [] });
});

test("an altered picture that no server holds is not given up", async () => {
  const hash = await photo(1000);
  await alter(store, hash);
  expect(await fetchAgain(hash)).toBe(false);
  expect(await store.images.get(hash)).toBeDefined();
});

test("a server that has another picture under the name is told apart from one that has none", async () => {
  const hash = await photo(1000);
  await exchange(store, server.fetch);
  const other = await newStore();
  await exchange(other, server.fetch);
  await downloadPhotos(other, server.fetch, never, new Set());
  expect(alteredOnServer(hash)).toBe(false);
  const noticed: typeof server.fetch = async () => json(404, { code: "altered", message: "changed" });
  await downloadPhotos(other, noticed, never, new Set());
  expect(alteredOnServer(hash)).toBe(true);
  await as(store, () => uploadPhotos(store, server.fetch, never));
  await downloadPhotos(other, server.fetch, never, new Set());
  expect([alteredOnServer(hash), await other.photos.count()]).toEqual([false, 1]);
});

test("what is not the named picture is not kept, and what is not there yet is asked for later", async () => {
  const hash = await photo(1000);
  await exchange(store, server.fetch);
  const other = await newStore();
  await exchange(other, server.fetch);
  const absent = new Set<string>();
  await downloadPhotos(other, server.fetch, never, absent);
  expect([...absent]).toEqual([hash]);
  const wrong: typeof server.fetch = async () =>
    new Response(png(40, 30, 999), { headers: { "content-type": "image/png", asfound: "1" } });
  await downloadPhotos(other, wrong, never, new Set());
  expect([await other.photos.count(), alteredOnServer(hash)]).toEqual([0, true]);
  const portal: typeof server.fetch = async () =>
    new Response("<html>", { headers: { "content-type": "text/html" } });
  await expect(downloadPhotos(other, portal, never, new Set())).rejects.toMatchObject({ kind: "offline" });
});
