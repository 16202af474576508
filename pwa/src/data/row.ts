/**
 * A row and its merge. Rows form a join-semilattice: merging is commutative, associative and idempotent,
 * so any order, repetition or delay of messages ends in the same rows.
 */
import { rowWords } from "../words/data.ts";
import { isStamp, stampDevice } from "./clock.ts";
import { byteLength, canonical, compareBytes, type Json, MAX_VALUE_BYTES, valueProblem } from "./value.ts";

export interface Entry {
  value: Json;
  stamp: string;
  /** Stamp of the value this edit replaced, "" for none. */
  base: string;
  /** Stamps of further values the user saw and settled. */
  settles?: string[];
}

export interface Row {
  doc: string;
  path: string;
  /** Sorted by stamp, at most one per device; the last one wins. */
  entries: Entry[];
  /** Sorted, at most one per device: the highest stamp of it that an entry replaced or settled. */
  seen: string[];
}

export const rowKey = (doc: string, path: string): string => `${doc}|${path}`;

const DOC = /^(?:shop|book|comparables|rubrics|decisions|listing:[0-9a-hjkmnp-tv-z]{26})$/;
const PATH = /^[a-z0-9_.-]{1,64}(?:\/[a-z0-9_.-]{1,64}){0,5}$/;
const DOTS_ALONE = /(?:^|\/)\.{1,2}(?:\/|$)/;
const MAX_PATH = 200;

export const isDoc = (doc: unknown): doc is string => typeof doc === "string" && DOC.test(doc);
export const isPath = (path: unknown): path is string =>
  typeof path === "string" && path.length <= MAX_PATH && PATH.test(path) && !DOTS_ALONE.test(path);

const settlesText = (entry: Entry): string => (entry.settles ?? []).join(",");

/** The one to keep of two entries of one device. */
function later(a: Entry, b: Entry): Entry {
  if (a.stamp !== b.stamp) return a.stamp > b.stamp ? a : b;
  const byValue = compareBytes(canonical(a.value), canonical(b.value));
  if (byValue !== 0) return byValue > 0 ? a : b;
  if (a.base !== b.base) return a.base > b.base ? a : b;
  return settlesText(a) >= settlesText(b) ? a : b;
}

/** The highest stamp of each device, sorted. */
export function highestPerDevice(stamps: Iterable<string>): string[] {
  const highest = new Map<string, string>();
  for (const stamp of stamps) {
    if (stamp === "") continue;
    const device = stampDevice(stamp);
    if (stamp > (highest.get(device) ?? "")) highest.set(device, stamp);
  }
  return [...highest.values()].sort();
}

/** Joins the entries and the seen stamps of one row, from any number of sources. */
export function join(doc: string, path: string, entries: readonly Entry[], seen: readonly string[]): Row {
  const kept = new Map<string, Entry>();
  for (const entry of entries) {
    const device = stampDevice(entry.stamp);
    const other = kept.get(device);
    kept.set(device, other ? later(other, entry) : entry);
  }
  const replaced = entries.flatMap((entry) => [entry.base, ...(entry.settles ?? [])]);
  const allSeen = highestPerDevice([...seen, ...replaced]);
  const limit = new Map(allSeen.map((stamp) => [stampDevice(stamp), stamp]));
  const left = [...kept.values()].filter(
    (entry) => entry.stamp > (limit.get(stampDevice(entry.stamp)) ?? ""),
  );
  left.sort((a, b) => (a.stamp < b.stamp ? -1 : 1));
  return { doc, path, entries: left, seen: allSeen };
}

export const merge = (a: Row, b: Row): Row =>
  join(a.doc, a.path, [...a.entries, ...b.entries], [...a.seen, ...b.seen]);

export const emptyRow = (doc: string, path: string): Row => ({ doc, path, entries: [], seen: [] });

/** One entry per device and the device in the stamp: no two stamps are equal, so the last one wins. */
export const winner = (row: Row): Entry | undefined => row.entries.at(-1);
export const losers = (row: Row): Entry[] => row.entries.slice(0, -1);

/** Losers that say something else than the winner; two people writing the same is no conflict. */
export function rivals(row: Row): Entry[] {
  const value = canonical(rowValue(row));
  return losers(row).filter((entry) => canonical(entry.value) !== value);
}

/** The winner's value, null when removed or never set. */
export const rowValue = (row: Row): Json => winner(row)?.value ?? null;

/** Every stamp that the rows name, to lift a clock or to look for one that is too far ahead. */
export function* stampsOf(rows: Iterable<Row>): Generator<string> {
  for (const row of rows) {
    for (const entry of row.entries) yield entry.stamp;
    yield* row.seen;
  }
}

/** The one text of a row, to compare replicas. */
export function rowText(row: Row): string {
  const { doc, path, entries, seen } = row;
  return canonical({ doc, path, entries: entries.map(plainEntry), seen });
}

/** An entry with its known members only, in the shape that is sent. */
export function plainEntry(entry: Entry): { [key: string]: Json } & Entry {
  const plain = { value: entry.value, stamp: entry.stamp, base: entry.base };
  return entry.settles && entry.settles.length > 0 ? { ...plain, settles: [...entry.settles] } : plain;
}

const isRecord = (thing: unknown): thing is Record<string, unknown> =>
  typeof thing === "object" && thing !== null && !Array.isArray(thing);

/** Reads an entry of unknown origin; a text is the reason why it is none. */
export function readEntry(thing: unknown): Entry | string {
  if (!isRecord(thing)) return rowWords.noEntry;
  const { value, stamp, base, settles } = thing;
  if (!isStamp(stamp)) return rowWords.stamp;
  if (base !== "" && !isStamp(base)) return rowWords.base;
  if (base >= stamp) return rowWords.baseNewer;
  if (value === undefined) return rowWords.noValue;
  const problem = valueProblem(value);
  if (problem) return rowWords.value(problem);
  if (byteLength(canonical(value as Json)) > MAX_VALUE_BYTES) {
    return rowWords.tooLong(MAX_VALUE_BYTES / 1024);
  }
  const entry: Entry = { value: value as Json, stamp, base };
  if (settles === undefined || settles === null) return entry;
  if (!Array.isArray(settles) || !settles.every((s) => isStamp(s) && s < stamp)) {
    return rowWords.settles;
  }
  return settles.length > 0 ? { ...entry, settles: [...new Set(settles as string[])].sort() } : entry;
}

export interface RowReading {
  /** Absent when nothing of it can be taken. */
  row?: Row;
  /** What was not taken; an empty stamp means the whole row. */
  refused: { stamp: string; reason: string }[];
}

/** Reads a row of unknown origin: a bad entry is refused, the others are taken. */
export function readRow(thing: unknown): RowReading {
  const whole = (reason: string): RowReading => ({ refused: [{ stamp: "", reason }] });
  if (!isRecord(thing)) return whole(rowWords.noRow);
  const { doc, path, entries, seen } = thing;
  if (!isDoc(doc)) return whole(rowWords.document);
  if (!isPath(path)) return whole(rowWords.path);
  if (!Array.isArray(entries)) return whole(rowWords.entries);
  const stamps: unknown = seen ?? [];
  if (!Array.isArray(stamps) || !stamps.every(isStamp)) return whole(rowWords.seen);
  const read: Entry[] = [];
  const refused: RowReading["refused"] = [];
  for (const item of entries as unknown[]) {
    const entry = readEntry(item);
    if (typeof entry !== "string") read.push(entry);
    else
      refused.push({
        stamp: isRecord(item) && typeof item.stamp === "string" ? item.stamp.slice(0, 64) : "",
        reason: entry,
      });
  }
  if (read.length === 0 && stamps.length === 0)
    return refused.length > 0 ? { refused } : whole(rowWords.empty);
  return { row: join(doc, path, read, stamps), refused };
}
