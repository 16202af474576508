import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { current } from "./db.ts";
import { addPhoto, photoBlob, photoHash, photoPath, type Shrunk, sha256, shownPhoto } from "./photo.ts";
import { checkPicture } from "./picture.ts";
import { heic, jpeg, newStore, png, webp } from "./testing.ts";
import { edit } from "./write.ts";

beforeEach(async () => {
  await newStore();
});
afterEach(() => vi.unstubAllGlobals());

/** Stands in for the browser's drawing, which there is none of here. */
const shrink = async (file: Blob): Promise<Shrunk> => ({
  data: await file.arrayBuffer(),
  type: "image/jpeg",
  width: 4,
  height: 3,
});
const add = (bytes: Uint8Array<ArrayBuffer>) => addPhoto(new Blob([bytes]), shrink);

test.each([
  ["JPEG", jpeg(4032, 3024), { type: "image/jpeg", width: 4032, height: 3024 }],
  ["PNG", png(640, 480), { type: "image/png", width: 640, height: 480 }],
  ["WebP", webp(1600, 1200), { type: "image/webp", width: 1600, height: 1200 }],
  ["exactly 50 megapixels", png(10_000, 5_000), { type: "image/png", width: 10_000, height: 5_000 }],
])("%s header is read", (_, bytes, want) => expect(checkPicture(bytes)).toEqual(want));

test.each([
  ["0 bytes", new Uint8Array(), "empty (0 bytes)"],
  ["text", new TextEncoder().encode("not a picture at all"), "not a photo"],
  ["a page", new TextEncoder().encode("<!doctype html><svg>"), "not a photo"],
  ["GIF", new TextEncoder().encode("GIF89a......"), "GIF"],
  ["HEIC", heic(), "HEIC"],
  ["60 megapixels", png(10_000, 6_000), "50 million"],
  ["12,001 wide", png(12_001, 10), "at most 12000 a side"],
  ["100,000 x 100,000", png(100_000, 100_000), "at most 12000 a side"],
  ["no width", png(0, 10), "damaged"],
  ["a JPEG cut off before its frame", jpeg(10, 10).slice(0, 11), "cut off"],
  ["a PNG cut off", png(10, 10).slice(0, 20), "cut off"],
  ["a JPEG with a false marker", new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 0, 2, 7, 7, 7, 7]), "damaged"],
])("%s is refused before decoding, and nothing is stored", async (_, bytes, words) => {
  const drawn = vi.fn(shrink);
  await expect(addPhoto(new Blob([bytes]), drawn)).rejects.toThrow(words);
  expect(drawn).not.toHaveBeenCalled();
  expect(await current().photos.count()).toBe(0);
});

test("a photo is stored under the hash of its content, once", async () => {
  const first = await add(jpeg(40, 30));
  const again = await add(jpeg(40, 30));
  expect(first.hash).toBe(await sha256(jpeg(40, 30)));
  expect(again).toEqual(first);
  expect(await current().photos.count()).toBe(1);
  expect((await current().photos.get(first.hash))?.uploaded).toBe(0);
  expect(new Uint8Array((await (await photoBlob(first.hash))?.arrayBuffer()) ?? new ArrayBuffer())).toEqual(
    jpeg(40, 30),
  );
});

test("an address is given once per photo, and none for an unknown one", async () => {
  const { hash } = await add(jpeg(40, 30));
  const shown = await shownPhoto(hash);
  expect(shown).toMatchObject({
    state: "whole",
    url: expect.stringMatching(/^blob:/),
    width: 4,
    height: 3,
  });
  expect(await shownPhoto(hash)).toBe(shown);
  expect(await shownPhoto("0".repeat(64))).toEqual({ state: "missing" });
});

test("no room: the photo is refused with the amount to free, the answer beside it is kept", async () => {
  vi.stubGlobal("navigator", { storage: { estimate: async () => ({ quota: 100e6, usage: 99e6 }) } });
  const path = "finding/wr09/answer";
  await edit("Grade", [{ doc: "listing:01hzzzzzzzzzzzzzzzzzzzzzz1", path, value: { grade: 1 } }]);
  await expect(add(jpeg(40, 30))).rejects.toMatchObject({
    code: "quota",
    message: expect.stringContaining("free 5 MB"),
  });
  expect(await current().rows.count()).toBe(1);
});

test("the path of a photo names its hash", () => {
  const hash = "ab".repeat(32);
  expect(photoHash(photoPath(hash))).toBe(hash);
  expect(photoHash(photoPath(hash, "wr09"))).toBe(hash);
  expect(photoHash("finding/wr09/note")).toBeUndefined();
});
