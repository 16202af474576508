import { liveQuery } from "dexie";
import { endOfMs, stampDevice, stampMs } from "./clock.ts";
import { current, type ParkedRow, type Store, type StoredRow } from "./db.ts";
import { asDataError } from "./error.ts";
import { type ListingSummary, rowsOf } from "./head.ts";
import { readDevice, readSync } from "./meta.ts";
import { type Entry, rivals, rowValue, winner } from "./row.ts";
import type { Json } from "./value.ts";

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

export type { ListingSummary } from "./head.ts";

export type Parked = ParkedRow;

/** What a list shows of each listing, newest change first. Without deleted ones unless asked. */
export function listings(options: { deleted?: boolean } = {}): Promise<ListingSummary[]> {
  const store = current();
  return store.read(["heads"], async () => {
    const heads = await store.heads.toArray();
    return heads
      .filter((one) => options.deleted === true || !one.deleted)
      .sort((a, b) => b.changed - a.changed || (a.id < b.id ? -1 : 1));
  });
}

const newest = (rows: StoredRow[]): number =>
  rows.reduce((most, row) => Math.max(most, stampMs(winner(row)?.stamp ?? endOfMs(0))), 0);

/** `doc("shop")`, `doc("book")`, `doc("comparables")`, `doc("listing:<id>")`; empty when there is none. */
export function doc(id: string): Promise<Doc> {
  const store = current();
  return store.read(["rows", "meta"], async () => {
    const rows = await rowsOf(store, id);
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

/** What is told in a document, by path, each with the stamp of its entry. */
export function toldRows(id: string): Promise<Map<string, { value: Json; stamp: string }>> {
  const store = current();
  return store.read(["rows"], async () => {
    const told = new Map<string, { value: Json; stamp: string }>();
    for (const row of await rowsOf(store, id)) {
      const top = winner(row);
      if (top && top.value !== null) told.set(row.path, { value: top.value, stamp: top.stamp });
    }
    return told;
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
