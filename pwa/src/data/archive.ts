import { strToU8, Zip, ZipDeflate, ZipPassThrough } from "fflate";
import { archiveWords } from "../words/archive.ts";
import { absorb } from "./absorb.ts";
import { FUTURE_BOUND_MS, stampMs } from "./clock.ts";
import { current, LONG_LIMIT_MS, type PhotoRow, type Store } from "./db.ts";
import { DataError } from "./error.ts";
import { type Carried, loadAppraisalFile } from "./file.ts";
import { alone } from "./lock.ts";
import { lift, physical, readDevice, readSync, repushAll } from "./meta.ts";
import { checkedPhoto, sha256 } from "./photo.ts";
import { checkPicture } from "./picture.ts";
import { merge, plainEntry, type Row, readRow, rowKey, rowText, stampsOf, winner } from "./row.ts";
import { tellSaved } from "./saved.ts";
import { integerOf, isRecord, textOf } from "./shape.ts";
import type { Json } from "./value.ts";
import { CLOCK_LOCK } from "./write.ts";
import { broken, openZip, type ZipPart } from "./zip.ts";

const ARCHIVE_FORMAT = "asfound-archive";
const ARCHIVE_VERSION = 1;
const RECORDS = "records.json";
const MAX_RECORDS_BYTES = 512 * 1024 * 1024;
const MAX_PHOTO_BYTES = 12 * 1024 * 1024;
/** The zip format without its 64-bit extension ends at 4 GiB. */
const MAX_ARCHIVE_BYTES = 4_000_000_000;

interface Refusal {
  /** doc and path, or the file inside the archive. */
  where: string;
  reason: string;
}

export interface ArchiveReport {
  /** ISO 8601, when the archive was written; "" unknown. */
  made: string;
  /** added: not here yet; newer: the archive's value replaces the one here; older: the one here stays; same: equal. */
  rows: { added: number; same: number; newer: number; older: number };
  photos: { added: number; same: number };
  refused: Refusal[];
  /** True when applying it would change nothing. */
  nothing: boolean;
}

type PhotoInfo = Omit<PhotoRow, "uploaded" | "refused">;

/** What readArchive found, for applyArchive. */
interface Plan {
  rows: Row[];
  photos: { info: PhotoInfo; part: ZipPart }[];
}

const plans = new WeakMap<ArchiveReport, Plan>();

const ENDINGS: Record<string, string> = { "image/jpeg": "jpg", "image/png": "png", "image/webp": "webp" };
const photoFile = (photo: { hash: string; type: string }): string =>
  `photos/${photo.hash}.${ENDINGS[photo.type] ?? "bin"}`;

/**
 * Everything on this device as one zip file. `left` counts pictures that are not the recorded ones: under their
 * hash nobody could import them.
 */
export async function exportArchive(): Promise<{ name: string; blob: Blob; left: number }> {
  const store = current();
  const { device, rows, photos } = await store.read(["rows", "meta", "photos"], async () => {
    const photos: PhotoInfo[] = [];
    await store.photos.each(({ uploaded: _, refused: __, ...info }) => photos.push(info));
    return { device: await readDevice(store), rows: await store.rows.toArray(), photos };
  });
  if (photos.reduce((sum, photo) => sum + photo.bytes, 0) > MAX_ARCHIVE_BYTES) {
    throw new DataError("archive", archiveWords.tooManyPhotos(MAX_ARCHIVE_BYTES / 1e9));
  }
  const made = new Date(physical(device)).toISOString();
  const plain = rows.map(({ doc, path, entries, seen }) => ({
    doc,
    path,
    entries: entries.map(plainEntry),
    seen,
  }));
  const head = { format: ARCHIVE_FORMAT, version: ARCHIVE_VERSION, made, device: device.id };
  let left = 0;
  const blob = await zipped(async (add) => {
    const whole: PhotoInfo[] = [];
    for (const info of photos) {
      const image = await store.read(["images"], () => store.images.get(info.hash));
      if (!image) continue;
      if ((await sha256(image.data)) !== info.hash) {
        left++;
        continue;
      }
      add(photoFile(info), new Uint8Array(image.data), false);
      whole.push(info);
    }
    add(RECORDS, strToU8(JSON.stringify({ ...head, photos: whole, rows: plain })), true);
  });
  return { name: `asfound-backup-${made.slice(0, 10)}.zip`, blob, left };
}

type AddPart = (name: string, data: Uint8Array, pack: boolean) => void;

async function zipped(fill: (add: AddPart) => Promise<void>): Promise<Blob> {
  const chunks: BlobPart[] = [];
  let failed: Error | undefined;
  const zip = new Zip((error, chunk) => {
    if (error) failed = error;
    else chunks.push(chunk as Uint8Array<ArrayBuffer>);
  });
  await fill((name, data, pack) => {
    const part = pack ? new ZipDeflate(name, { level: 6 }) : new ZipPassThrough(name);
    zip.add(part);
    part.push(data, true);
  });
  zip.end();
  if (failed) throw new DataError("archive", archiveWords.notMade, { cause: failed });
  return new Blob(chunks, { type: "application/zip" });
}

/** Dry run: reads and checks all, changes nothing. Rejects with DataError for a broken or newer file. */
export async function readArchive(file: Blob): Promise<ArchiveReport> {
  const store = current();
  const parts = await openZip(file);
  const records = await readRecords(parts);
  const refused: Refusal[] = [];
  const now = await store.read(["meta"], async () => physical(await readDevice(store)));
  const rows = readRows(records.rows, now, refused);
  const photos = await readPhotos(records.photos, parts, refused);
  const counts = { added: 0, same: 0, newer: 0, older: 0 };
  let changes = 0;
  const held = await store.read(["rows", "photos"], async () => {
    for (const row of rows) {
      const here = await store.rows.get(rowKey(row.doc, row.path));
      const { kind, changed } = compare(here, row);
      counts[kind]++;
      if (changed) changes++;
    }
    return new Set(await store.photos.toCollection().primaryKeys());
  });
  const added: Plan["photos"] = [];
  for (const photo of photos) {
    // A copy here that is not the recorded picture gives way to the one in the backup.
    const here = held.has(photo.info.hash) && (await checkedPhoto(photo.info.hash)).state === "whole";
    if (!here) added.push(photo);
  }
  const report: ArchiveReport = {
    made: textOf(records.made) ?? "",
    rows: counts,
    photos: { added: added.length, same: photos.length - added.length },
    refused,
    nothing: changes === 0 && added.length === 0,
  };
  plans.set(report, { rows, photos: added });
  return report;
}

async function readRecords(parts: Map<string, ZipPart>): Promise<{ [key: string]: Json }> {
  const part = parts.get(RECORDS);
  if (!part) throw broken(archiveWords.noRecords(RECORDS));
  if (part.size > MAX_RECORDS_BYTES) throw broken(archiveWords.tooLarge(RECORDS));
  let records: unknown;
  try {
    records = JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(await part.read()));
  } catch (cause) {
    if (cause instanceof DataError) throw cause;
    throw broken(archiveWords.noJson(RECORDS));
  }
  if (!isRecord(records) || records.format !== ARCHIVE_FORMAT) throw broken(archiveWords.noBackup);
  const version = integerOf(records.version);
  if (version === undefined || version < 1) throw broken(archiveWords.noVersion);
  if (version > ARCHIVE_VERSION) {
    throw new DataError("archive", archiveWords.newer(version, ARCHIVE_VERSION));
  }
  return records;
}

function readRows(list: Json | undefined, now: number, refused: Refusal[]): Row[] {
  if (!Array.isArray(list)) throw broken(archiveWords.noRows(RECORDS));
  const rows = new Map<string, Row>();
  for (const [i, item] of list.entries()) {
    const reading = readRow(item);
    for (const { reason } of reading.refused) refused.push({ where: whereOf(item, i), reason });
    const { row } = reading;
    if (!row) continue;
    if (stampsAhead(row, now)) {
      refused.push({ where: whereOf(item, i), reason: archiveWords.future });
      continue;
    }
    const key = rowKey(row.doc, row.path);
    const twice = rows.get(key);
    rows.set(key, twice ? merge(twice, row) : row);
  }
  return [...rows.values()];
}

function stampsAhead(row: Row, now: number): boolean {
  for (const stamp of stampsOf([row])) if (stampMs(stamp) > now + FUTURE_BOUND_MS) return true;
  return false;
}

function whereOf(item: Json, index: number): string {
  const doc = isRecord(item) ? textOf(item.doc) : undefined;
  const path = isRecord(item) ? textOf(item.path) : undefined;
  return doc !== undefined && path !== undefined
    ? `${doc.slice(0, 60)} ${path.slice(0, 200)}`
    : archiveWords.row(index + 1);
}

async function readPhotos(
  list: Json | undefined,
  parts: Map<string, ZipPart>,
  refused: Refusal[],
): Promise<Plan["photos"]> {
  const photos: Plan["photos"] = [];
  for (const item of Array.isArray(list) ? list : []) {
    const hash = isRecord(item) ? textOf(item.hash) : undefined;
    const type = isRecord(item) ? textOf(item.type) : undefined;
    if (!isRecord(item) || !hash || !/^[0-9a-f]{64}$/.test(hash) || !type) {
      refused.push({ where: archiveWords.photos, reason: archiveWords.photoEntry });
      continue;
    }
    const name = photoFile({ hash, type });
    try {
      const part = parts.get(name);
      if (!part) throw new DataError("photo", archiveWords.noPhoto);
      const info = await checkPhotoPart(part, hash, textOf(item.at) ?? "");
      photos.push({ info, part });
    } catch (cause) {
      if (!(cause instanceof DataError)) throw cause;
      refused.push({ where: name, reason: cause.message });
    }
  }
  return photos;
}

async function checkPhotoPart(part: ZipPart, hash: string, at: string): Promise<PhotoInfo> {
  if (part.size > MAX_PHOTO_BYTES)
    throw new DataError("photo", archiveWords.largePhoto(MAX_PHOTO_BYTES / 2 ** 20));
  const data = await part.read();
  const header = checkPicture(data);
  if ((await sha256(data)) !== hash) throw new DataError("photo", archiveWords.otherPhoto);
  return { hash, ...header, bytes: data.byteLength, at };
}

function compare(here: Row | undefined, row: Row): { kind: keyof ArchiveReport["rows"]; changed: boolean } {
  if (!here) return { kind: "added", changed: true };
  const merged = merge(here, row);
  const changed = rowText(merged) !== rowText(here);
  if (winner(merged)?.stamp !== winner(here)?.stamp) return { kind: "newer", changed };
  return { kind: winner(row)?.stamp === winner(here)?.stamp ? "same" : "older", changed };
}

/** Applies what readArchive reported. Photos first: a row may then point at one. */
export async function applyArchive(report: ArchiveReport): Promise<void> {
  const plan = plans.get(report);
  if (!plan) throw new DataError("archive", archiveWords.readFirst);
  if (report.nothing) return;
  const store = current();
  for (const { info, part } of plan.photos) {
    const data = (await part.read()).buffer;
    await store.write(["photos", "images"], async () => {
      const known = await store.photos.get(info.hash);
      await store.photos.put({ ...info, uploaded: known?.uploaded ?? 0 });
      await store.images.put({ hash: info.hash, data });
    });
  }
  await alone(CLOCK_LOCK, () =>
    store.write(["rows", "meta", "heads"], () => mergeAll(store, plan.rows), LONG_LIMIT_MS),
  );
  tellSaved();
}

async function mergeAll(store: Store, rows: readonly Row[]): Promise<void> {
  const device = await readDevice(store);
  const changed = await absorb(store, rows, device.id);
  if (changed.length === 0) return;
  await store.meta.put(lift(device, stampsOf(changed)));
  // Entries of other devices are not "own": only a push of whole rows takes them to the server.
  await store.meta.put(repushAll(await readSync(store)));
}

/** One listing as an appraisal file (JSON) for the engine and the command line. */
export async function exportAppraisal(
  listing: string,
  carried: Carried,
): Promise<{ name: string; blob: Blob; problems: string[] }> {
  const { file, problems } = await loadAppraisalFile(listing, carried);
  const title = file.listing.title
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 40);
  const blob = new Blob([`${JSON.stringify(file, null, 2)}\n`], { type: "application/json" });
  return { name: `appraisal-${title || "listing"}.json`, blob, problems };
}
