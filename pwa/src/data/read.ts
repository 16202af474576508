import { liveQuery } from "dexie";
import type { Quantity, RubricRef } from "../generated/types.ts";
import { endOfMs, stampDevice, stampMs } from "./clock.ts";
import { current, type ParkedRow, type Store, type StoredRow } from "./db.ts";
import { asDataError } from "./error.ts";
import { listingId } from "./id.ts";
import { readDevice, readSync } from "./meta.ts";
import { photoHash } from "./photo.ts";
import { type Entry, rivals, rowValue, winner } from "./row.ts";
import { rubricMarkOf } from "./rubric-mark.ts";
import { integerOf, quantityOf, rubricOf, textOf } from "./shape.ts";
import type { Json } from "./value.ts";

export interface ListingSummary {
  id: string;
  /** `listing:<id>` */
  doc: string;
  title: string;
  maker?: string;
  model?: string;
  made?: number;
  rubric?: RubricRef;
  capacity?: Quantity;
  place?: string;
  /** cents */
  asking?: number;
  seller?: string;
  date?: string;
  /** Hash of its first photo. */
  photo?: string;
  deleted: boolean;
  /** Deleted, and something in it was changed later than that. */
  changedAfterDelete: boolean;
  conflicts: number;
  /** Rows of it not yet on the server. */
  pending: number;
  /** ms since epoch, newest known change of its head fields or pending rows. */
  changed: number;
}

export interface Version {
  stamp: string;
  value: Json;
  /** ms since epoch */
  at: number;
  /** Made on this device. */
  own: boolean;
}

export interface Conflict {
  doc: string;
  path: string;
  winner: Version;
  losers: Version[];
}

export interface Doc {
  doc: string;
  /** path -> value; removed paths are absent. */
  values: Map<string, Json>;
  conflicts: Conflict[];
  /** ms since epoch, 0 when empty */
  changed: number;
}

export type Parked = ParkedRow;

/** The fields a list of listings needs; read by path so that thousands of findings stay unread. */
const HEAD = [
  "asking",
  "capacity",
  "date",
  "deleted",
  "made",
  "maker",
  "model",
  "place",
  "rubric",
  "seller",
  "title",
];

/** Newest change first. Without deleted ones unless asked. */
export function listings(options: { deleted?: boolean } = {}): Promise<ListingSummary[]> {
  const store = current();
  return store.read(["rows", "meta", "parked"], async () => {
    const head = await store.rows.where("path").anyOf(HEAD).toArray();
    const photos = await store.rows.where("path").startsWith("photo/").toArray();
    const pending = await pendingRows(store);
    const disputed = await store.rows.where("losers").above(0).toArray();
    const byDoc = new Map<string, Parts>();
    const add = (rows: StoredRow[], part: keyof Parts) => {
      for (const row of rows) {
        if (listingId(row.doc) === undefined) continue;
        const parts = byDoc.get(row.doc) ?? { head: [], photos: [], pending: [], disputed: [] };
        parts[part].push(row);
        byDoc.set(row.doc, parts);
      }
    };
    add(head, "head");
    add(photos, "photos");
    add(pending, "pending");
    add(disputed, "disputed");
    const all = [...byDoc].map(([doc, parts]) => summary(doc, parts));
    for (const one of all) if (one.deleted) one.changedAfterDelete = await laterThanDelete(store, one.doc);
    return all
      .filter((one) => options.deleted === true || !one.deleted)
      .sort((a, b) => b.changed - a.changed || (a.id < b.id ? -1 : 1));
  });
}

interface Parts {
  head: StoredRow[];
  photos: StoredRow[];
  pending: StoredRow[];
  disputed: StoredRow[];
}

function summary(doc: string, parts: Parts): ListingSummary {
  const value = new Map(parts.head.map((row) => [row.path, rowValue(row)]));
  const text = (path: string) => textOf(value.get(path));
  const optional = <K extends string, T>(key: K, found: T | undefined) =>
    (found === undefined ? {} : { [key]: found }) as { [P in K]?: T };
  const photos = parts.photos.filter((row) => rowValue(row) !== null).map((row) => photoHash(row.path));
  const photo = photos.find((hash) => hash !== undefined);
  return {
    id: listingId(doc) ?? "",
    doc,
    title: text("title") ?? "",
    ...optional("maker", text("maker")),
    ...optional("model", text("model")),
    ...optional("made", integerOf(value.get("made"))),
    ...optional("rubric", rubricMarkOf(value.get("rubric")) ?? rubricOf(value.get("rubric"))),
    ...optional("capacity", quantityOf(value.get("capacity"))),
    ...optional("place", text("place")),
    ...optional("asking", integerOf(value.get("asking"))),
    ...optional("seller", text("seller")),
    ...optional("date", text("date")),
    ...optional("photo", photo),
    deleted: value.get("deleted") === true,
    changedAfterDelete: false,
    conflicts: parts.disputed.length,
    pending: parts.pending.length,
    changed: newest([...parts.head, ...parts.pending]),
  };
}

async function laterThanDelete(store: Store, doc: string): Promise<boolean> {
  const rows = await store.rows.where("doc").equals(doc).toArray();
  const removal = rows.find((row) => row.path === "deleted");
  const at = removal && winner(removal)?.stamp;
  return at !== undefined && rows.some((row) => (winner(row)?.stamp ?? "") > at);
}

const newest = (rows: StoredRow[]): number =>
  rows.reduce((most, row) => Math.max(most, stampMs(winner(row)?.stamp ?? endOfMs(0))), 0);

/** `doc("shop")`, `doc("book")`, `doc("comparables")`, `doc("listing:<id>")`; empty when there is none. */
export function doc(id: string): Promise<Doc> {
  const store = current();
  return store.read(["rows", "meta"], async () => {
    const rows = await store.rows.where("doc").equals(id).sortBy("path");
    const device = await readDevice(store);
    const values = new Map<string, Json>();
    for (const row of rows) {
      const value = rowValue(row);
      if (value !== null) values.set(row.path, value);
    }
    return {
      doc: id,
      values,
      conflicts: rows.filter(disputed).map(conflictOf(device.id)),
      changed: newest(rows),
    };
  });
}

const disputed = (row: StoredRow): boolean => row.losers > 0;

const conflictOf =
  (device: string) =>
  (row: StoredRow): Conflict => {
    const version = (entry: Entry): Version => ({
      stamp: entry.stamp,
      value: entry.value,
      at: stampMs(entry.stamp),
      own: stampDevice(entry.stamp) === device,
    });
    const top = winner(row) as Entry;
    return { doc: row.doc, path: row.path, winner: version(top), losers: rivals(row).map(version).reverse() };
  };

/** Of one document, or of all. */
export function conflicts(id?: string): Promise<Conflict[]> {
  const store = current();
  return store.read(["rows", "meta"], async () => {
    const device = await readDevice(store);
    const rows = await store.rows.where("losers").above(0).toArray();
    return rows.filter((row) => id === undefined || row.doc === id).map(conflictOf(device.id));
  });
}

/** Rows whose own entry the server has neither acknowledged nor refused, oldest edit first. In a transaction. */
export async function pendingRows(store: Store, limit = Number.POSITIVE_INFINITY): Promise<StoredRow[]> {
  const { mark } = await readSync(store);
  const refused = new Set(await store.parked.toCollection().primaryKeys());
  let rows = store.rows.where("own").above(mark);
  if (refused.size > 0) rows = rows.and((row) => !refused.has(`${row.key}|${row.own}`));
  return (Number.isFinite(limit) ? rows.limit(limit) : rows).toArray();
}

/** Rows not yet acknowledged by the server. */
export function pendingCount(): Promise<number> {
  const store = current();
  return store.read(["rows", "meta", "parked"], async () => {
    const { mark } = await readSync(store);
    const all = await store.rows.where("own").above(mark).count();
    return (await store.parked.count()) === 0 ? all : (await pendingRows(store)).length;
  });
}

/** What the server refused; kept here. */
export function parked(): Promise<Parked[]> {
  const store = current();
  return store.read(["parked"], () => store.parked.toArray());
}

const RETRY_MS = 1_000;

/** Runs the query now and after every change it depends on, in any tab. Returns the unsubscriber. */
export function watch<T>(
  query: () => Promise<T>,
  callback: (value: T) => void,
  onError?: (error: Error) => void,
): () => void {
  let stopped = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let subscription: { unsubscribe(): void } | undefined;
  const subscribe = () => {
    subscription = liveQuery(query).subscribe(callback, (cause: unknown) => {
      if (stopped) return;
      onError?.(asDataError(cause));
      subscription?.unsubscribe();
      timer = setTimeout(subscribe, RETRY_MS);
    });
  };
  subscribe();
  return () => {
    stopped = true;
    clearTimeout(timer);
    subscription?.unsubscribe();
  };
}
