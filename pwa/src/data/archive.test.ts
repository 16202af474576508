import { strToU8, unzipSync, zipSync } from "fflate";
import { beforeEach, describe, expect, test } from "vitest";
import { applyArchive, exportAppraisal, exportArchive, readArchive } from "./archive.ts";
import { formatStamp } from "./clock.ts";
import { current } from "./db.ts";
import { shop as defaultShop } from "./file.test-data.ts";
import { readSync } from "./meta.ts";
import { addPhoto, type Shrunk } from "./photo.ts";
import { doc } from "./read.ts";
import { as, jpeg, newStore, texts } from "./testing.ts";
import { edit } from "./write.ts";
import { crc32 } from "./zip.ts";

const LISTING = "listing:01hzzzzzzzzzzzzzzzzzzzzzz1";
const asIs = async (file: Blob): Promise<Shrunk> => ({
  data: await file.arrayBuffer(),
  type: "image/jpeg",
  width: 40,
  height: 30,
});
const set = (path: string, value: string | number) => edit("Edit", [{ doc: LISTING, path, value }]);

async function filled() {
  const store = await newStore();
  await set("title", "two post lift");
  await set("asking", 240000);
  const photo = await addPhoto(new Blob([jpeg(40, 30)]), asIs);
  await edit("Photo", [
    { doc: LISTING, path: `photo/${photo.hash}`, value: { at: photo.at, width: 40, height: 30 } },
  ]);
  return { store, photo };
}

type Parts = Record<string, Uint8Array>;

/** The archive with its parts changed by hand. */
async function altered(blob: Blob, change: (parts: Parts) => void): Promise<Blob> {
  const parts: Parts = unzipSync(new Uint8Array(await blob.arrayBuffer()));
  change(parts);
  return new Blob([zipSync(parts) as Uint8Array<ArrayBuffer>]);
}

function changeRecords(change: (records: { [key: string]: unknown }) => void) {
  return (parts: Parts) => {
    const records = JSON.parse(new TextDecoder().decode(parts["records.json"]));
    change(records);
    parts["records.json"] = strToU8(JSON.stringify(records));
  };
}

let blob: Blob;
let hash: string;
beforeEach(async () => {
  const { photo } = await filled();
  hash = photo.hash;
  ({ blob } = await exportArchive());
});

test("the file holds the records and the photos, and any zip program opens it", async () => {
  const parts = unzipSync(new Uint8Array(await blob.arrayBuffer()));
  expect(Object.keys(parts).sort()).toEqual([`photos/${hash}.jpg`, "records.json"]);
  expect(parts[`photos/${hash}.jpg`]).toEqual(jpeg(40, 30));
  const records = JSON.parse(new TextDecoder().decode(parts["records.json"]));
  expect(records).toMatchObject({ format: "asfound-archive", version: 1 });
});

test("round trip: same rows and photos on another device, and they go to the server whole", async () => {
  const from = current();
  const to = await newStore();
  const report = await readArchive(blob);
  expect(report).toMatchObject({
    rows: { added: 3, same: 0, newer: 0, older: 0 },
    photos: { added: 1, same: 0 },
    refused: [],
    nothing: false,
  });
  expect(await to.rows.count()).toBe(0);
  await applyArchive(report);
  expect(await texts(to)).toEqual(await texts(from));
  expect((await to.photos.get(hash))?.uploaded).toBe(0);
  expect((await readSync(to)).repush).toBe("");
  await set("title", "edited here after that");
  expect((await doc(LISTING)).values.get("title")).toBe("edited here after that");
});

test("importing twice changes nothing the second time", async () => {
  const to = await newStore();
  await applyArchive(await readArchive(blob));
  const [rows, sync] = [await texts(to), await readSync(to)];
  const report = await readArchive(blob);
  expect(report).toMatchObject({ rows: { added: 0, same: 3 }, photos: { added: 0, same: 1 }, nothing: true });
  await applyArchive(report);
  expect(await texts(to)).toEqual(rows);
  expect(await readSync(to)).toEqual(sync);
});

test("what is newer here stays, what is newer in the file is taken", async () => {
  await set("title", "newer here");
  const older = await readArchive(blob);
  expect(older).toMatchObject({ rows: { same: 2, older: 1, newer: 0 }, nothing: true });
  const from = current();
  const to = await newStore();
  await applyArchive(await readArchive(blob));
  const newer = await as(from, exportArchive);
  const report = await as(to, () => readArchive(newer.blob));
  expect(report.rows).toEqual({ added: 0, same: 2, newer: 1, older: 0 });
  await applyArchive(report);
  expect((await doc(LISTING)).values.get("title")).toBe("newer here");
});

describe("a bad file is refused in clear words and nothing changes", () => {
  const bytes = async () => new Uint8Array(await blob.arrayBuffer());
  const flipped = async (at: number) => {
    const all = await bytes();
    all[at] = (all[at] ?? 0) ^ 0x10;
    return new Blob([all]);
  };
  /** Where the name of a part first stands: before its bytes. */
  const whereIs = async (name: string) => new TextDecoder("latin1").decode(await bytes()).indexOf(name);
  const files: [string, () => Promise<Blob>, string][] = [
    ["an empty file", async () => new Blob([]), "it is empty"],
    ["a text", async () => new Blob(["hello, this is no zip file at all"]), "no zip file"],
    ["half a file", async () => new Blob([(await bytes()).slice(0, blob.size / 2)]), "its end is missing"],
    [
      "a flipped bit in the records",
      async () => flipped((await whereIs("records.json")) + 40),
      '"records.json" is damaged',
    ],
    ["a flipped bit in the table", () => flipped(blob.size - 20), "table of contents|damaged|end is missing"],
    [
      "another zip",
      async () => new Blob([zipSync({ "a.txt": strToU8("a") }) as Uint8Array<ArrayBuffer>]),
      "no records.json",
    ],
    [
      "no JSON",
      () => altered(blob, (parts) => (parts["records.json"] = strToU8('{"format":'))),
      "not whole JSON",
    ],
    [
      "another format",
      () =>
        altered(
          blob,
          changeRecords((r) => (r.format = "other")),
        ),
      "no backup of this app",
    ],
    [
      "a newer version",
      () =>
        altered(
          blob,
          changeRecords((r) => (r.version = 2)),
        ),
      "newer app (file version 2",
    ],
    [
      "no version",
      () =>
        altered(
          blob,
          changeRecords((r) => delete r.version),
        ),
      "version is missing",
    ],
    [
      "no rows",
      () =>
        altered(
          blob,
          changeRecords((r) => delete r.rows),
        ),
      "no list of rows",
    ],
  ];
  test.each(files)("%s", async (_, make, words) => {
    const file = await make();
    const store = await newStore();
    await expect(readArchive(file)).rejects.toThrow(new RegExp(words.replace(/[()]/g, "\\$&")));
    expect(await store.rows.count()).toBe(0);
  });
});

test("an altered picture is left out of the file and counted; a backup puts the recorded one in its place", async () => {
  const store = current();
  const before = await exportArchive();
  const altered = new Uint8Array((await store.images.get(hash))?.data ?? new ArrayBuffer());
  altered[altered.length - 1] = 7;
  await store.images.put({ hash, data: altered.buffer });
  const after = await exportArchive();
  expect([before.left, after.left]).toEqual([0, 1]);
  const parts = unzipSync(new Uint8Array(await after.blob.arrayBuffer()));
  expect(Object.keys(parts)).toEqual(["records.json"]);
  const report = await readArchive(before.blob);
  expect(report).toMatchObject({ photos: { added: 1, same: 0 }, nothing: false });
  await applyArchive(report);
  expect(new Uint8Array((await store.images.get(hash))?.data ?? new ArrayBuffer())).toEqual(jpeg(40, 30));
});

test("bad rows and photos are listed and the rest is taken", async () => {
  const stamp = (l: number) => formatStamp({ l, c: 0 }, "c3".repeat(8));
  const row = (path: string, s: string) => ({
    doc: LISTING,
    path,
    entries: [{ value: 1, stamp: s, base: "" }],
    seen: [],
  });
  const file = await altered(blob, (parts) => {
    changeRecords((records) => {
      (records.rows as unknown[]).push(
        row("../etc", stamp(5)),
        row("made", "FF"),
        row("date", stamp(Date.now() + 86_400_000)),
        7,
      );
      (records.photos as unknown[]).push({ hash: "cd".repeat(32), type: "image/jpeg" });
    })(parts);
    parts[`photos/${hash}.jpg`] = jpeg(41, 30);
  });
  const store = await newStore();
  const report = await readArchive(file);
  expect(report.rows.added).toBe(3);
  expect(report.photos.added).toBe(0);
  expect(report.refused.map((one) => `${one.where}: ${one.reason}`)).toEqual([
    expect.stringContaining("../etc: the path is malformed"),
    expect.stringContaining("made: the stamp is malformed"),
    expect.stringContaining("date: it lies in the future"),
    expect.stringContaining("row 7: a row must be an object"),
    expect.stringContaining("not the one its name says"),
    expect.stringContaining("missing in the backup"),
  ]);
  await applyArchive(report);
  expect(await store.rows.count()).toBe(3);
});

test("a part that unpacks to more than it says is refused", async () => {
  const bomb = zipSync({ "records.json": new Uint8Array(5_000_000) });
  const view = new DataView(bomb.buffer, bomb.byteOffset);
  let at = bomb.length - 22;
  at = view.getUint32(at + 16, true);
  view.setUint32(at + 24, 1000, true);
  await expect(readArchive(new Blob([bomb as Uint8Array<ArrayBuffer>]))).rejects.toThrow("damaged");
});

test("one listing as an appraisal file", async () => {
  const { name, blob: file } = await exportAppraisal(LISTING, { rubrics: [], shop: defaultShop });
  expect(name).toBe("appraisal-two-post-lift.json");
  expect(JSON.parse(await file.text())).toMatchObject({
    format: "asfound-appraisal",
    listing: { asking: 240000 },
  });
  await expect(
    exportAppraisal("listing:01hzzzzzzzzzzzzzzzzzzzzzz2", { rubrics: [], shop: defaultShop }),
  ).rejects.toThrow("no such listing");
});

test("CRC-32 of the nine digits is the published check value", () => {
  // The check value CBF43926 of CRC-32 (ISO-HDLC) for "123456789"; from memory.
  expect(crc32(new TextEncoder().encode("123456789"))).toBe(0xcbf43926);
});
