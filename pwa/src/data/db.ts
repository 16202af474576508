import Dexie, { type EntityTable, type Table, type Transaction } from "dexie";
import { stampDevice } from "./clock.ts";
import { asDataError, DataError, storeFault } from "./error.ts";
import { deriveHeads, type ListingSummary } from "./head.ts";
import { type Row, rivals, rowKey } from "./row.ts";
import type { Json } from "./value.ts";

export interface StoredRow extends Row {
  /** rowKey(doc, path) */
  key: string;
  /** Stamp of this device's entry in it, or "". "To send" is derived: own > mark. */
  own: string;
  /** Number of concurrent values that lost and differ from the winner. */
  losers: number;
}

/** Who this device is, and its clock's last reading. */
export interface DeviceMeta {
  key: "device";
  id: string;
  l: number;
  c: number;
  /** Server time minus device time at the last exchange, ms. */
  offset: number;
}

/** How far one page's noted edits are stored (see journal.ts); written with the edit itself. */
export interface PageMeta {
  key: `page:${string}`;
  stored: number;
}

export interface SyncMeta {
  key: "sync";
  epoch: string;
  seq: number;
  /** Highest own stamp known to be on the server. */
  mark: string;
  /** Highest own stamp ever handed to the network: it may be on the server though no answer came. */
  sent: string;
  /** Key after which whole rows are still to be pushed again; null when none are. */
  repush: string | null;
  /** Counts the times a push of whole rows was begun, so that a round under way notices a new beginning. */
  repushRun: number;
  /** ms since epoch of the last good answer, 0 never. */
  contact: number;
}

/** What is known of a photo; the picture itself is an ImageRow, so that counting photos does not load them. */
export interface PhotoRow {
  hash: string;
  type: string;
  width: number;
  height: number;
  bytes: number;
  /** ISO 8601, UTC */
  at: string;
  /** 1: the server holds it whole. */
  uploaded: 0 | 1;
  /** Why the server refused it. */
  refused?: string;
}

export interface ImageRow {
  hash: string;
  data: ArrayBuffer;
}

export interface UndoChange {
  doc: string;
  path: string;
  previous: Json;
  /** Stamp of the value before, "" for none. */
  before: string;
  stamp: string;
}

export interface UndoRow {
  id: number;
  label: string;
  at: number;
  changes: UndoChange[];
}

export interface ParkedRow {
  /** row key, "|" and the stamp */
  key: string;
  row: string;
  doc: string;
  path: string;
  stamp: string;
  reason: string;
  at: number;
}

const TABLES = ["rows", "meta", "photos", "images", "undo", "parked", "heads"] as const;
export type TableName = (typeof TABLES)[number];

/** A transaction that takes longer than this is given up, ms. */
const TIME_LIMIT_MS = 20_000;
/** The same for work over all rows. */
export const LONG_LIMIT_MS = 300_000;

export class Store extends Dexie {
  declare rows: Table<StoredRow, string>;
  declare meta: Table<DeviceMeta | SyncMeta | PageMeta, string>;
  declare photos: Table<PhotoRow, string>;
  declare images: Table<ImageRow, string>;
  declare undo: EntityTable<UndoRow, "id">;
  declare parked: Table<ParkedRow, string>;
  declare heads: Table<ListingSummary, string>;

  constructor(name = "asfound", options: { indexedDB?: IDBFactory; IDBKeyRange?: typeof IDBKeyRange } = {}) {
    super(name, { ...options, chromeTransactionDurability: "strict" });
    // Further versions only add; an index here is part of the disk format.
    this.version(1).stores({
      rows: "key, doc, path, own, losers",
      meta: "key",
      photos: "hash, uploaded",
      images: "hash",
      undo: "++id",
      parked: "key, row",
    });
    // Where a head comes to hold more than before, a further version derives all of them again.
    this.version(2)
      .stores({ heads: "doc" })
      .upgrade(async (tx) => {
        const tables = { rows: tx.table("rows"), heads: tx.table("heads") };
        const docs = (await tables.rows.orderBy("doc").uniqueKeys()) as string[];
        await deriveHeads(tables as Pick<Store, "rows" | "heads">, docs);
      });
  }

  read<T>(tables: readonly TableName[], work: () => Promise<T>): Promise<T> {
    return this.transact("r", tables, work);
  }

  /** Nothing but this store may be awaited inside work: the transaction would commit half-way. */
  write<T>(tables: readonly TableName[], work: () => Promise<T>, limitMs?: number): Promise<T> {
    return this.transact("rw", tables, work, limitMs);
  }

  private transact<T>(
    mode: "r" | "rw",
    tables: readonly TableName[],
    work: () => Promise<T>,
    limitMs = TIME_LIMIT_MS,
  ): Promise<T> {
    if (outdated.has(this)) return Promise.reject(storeFault("outdated"));
    const once = () => this.inTime(mode, tables, work, limitMs);
    // Phones drop the connection behind a page put into the background; the first use afterwards fails.
    return once()
      .catch((cause: unknown) => {
        if (asDataError(cause).code !== "lost" || outdated.has(this)) throw cause;
        this.close({ disableAutoOpen: false });
        return this.open().then(once);
      })
      .catch((cause: unknown) => {
        throw outdated.has(this) ? storeFault("outdated", cause) : asDataError(cause);
      }) as Promise<T>;
  }

  /** One transaction, aborted and given up when the browser does not finish it. */
  private inTime<T>(
    mode: "r" | "rw",
    tables: readonly TableName[],
    work: () => Promise<T>,
    limitMs: number,
  ): Promise<T> {
    let running: Transaction | undefined;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const late = new Dexie.Promise<never>((_, reject) => {
      timer = setTimeout(() => {
        if (running?.active) running.abort();
        reject(storeFault("stuck"));
      }, limitMs);
    });
    // Dexie follows a transaction through plain awaits only where the function itself is async.
    const done = this.transaction(mode, [...tables], async (tx) => {
      running = tx;
      return await work();
    });
    return Dexie.Promise.race([done, late]).finally(() => clearTimeout(timer)) as Promise<T>;
  }
}

const outdated = new WeakSet<Store>();

/** The row as it is kept, with what can be derived from it for the indexes. */
export function stored(row: Row, device: string): StoredRow {
  const own = row.entries.find((entry) => stampDevice(entry.stamp) === device)?.stamp ?? "";
  const { doc, path, entries, seen } = row;
  return { key: rowKey(doc, path), doc, path, entries, seen, own, losers: rivals(row).length };
}

export interface DataState {
  /** stored: kept on the device; memory: gone when the page closes; closed: reload needed. */
  mode: "opening" | "stored" | "memory" | "closed";
  problem?: DataError;
}

let state: DataState = { mode: "opening" };
let store: Store | undefined;
const listeners = new Set<(state: DataState) => void>();

export const dataState = (): DataState => state;

/** Called at each change of state. Returns the unsubscriber. */
export function onDataState(listener: (state: DataState) => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

function setState(next: DataState): DataState {
  state = next;
  for (const listener of listeners) listener(next);
  return next;
}

/** The open store. */
export function current(): Store {
  if (!store) throw storeFault("unavailable");
  return store;
}

/** Puts another store in the place of the current one. */
export function useStore(next: Store): Store {
  store = next;
  return next;
}

function listen(opened: Store): void {
  opened.on("versionchange", () => {
    outdated.add(opened);
    opened.close();
    setState({ mode: "closed", problem: storeFault("outdated") });
    // Dexie's own handler, which comes after this one, would open the store again.
    return false;
  });
  opened.on("blocked", () => setState({ ...state, problem: storeFault("blocked") }));
}

/** Opens the store; call once at start, before anything else here. Never rejects: see the state. */
export async function openData(name?: string): Promise<DataState> {
  const opened = new Store(name);
  listen(opened);
  try {
    await opened.open().catch(() => opened.open());
    useStore(opened);
    return setState({ mode: "stored" });
  } catch (cause) {
    opened.close();
    return openMemory(cause);
  }
}

/** The same store held in memory, so that capture and the backup file work in a browser that keeps nothing. */
async function openMemory(cause: unknown): Promise<DataState> {
  try {
    const { IDBFactory, IDBKeyRange } = await import("fake-indexeddb");
    const indexedDB = new IDBFactory();
    // Live queries run only where Dexie knows an IndexedDB.
    Object.assign(Dexie.dependencies, { indexedDB, IDBKeyRange });
    const opened = new Store("asfound-memory", { indexedDB, IDBKeyRange });
    await opened.open();
    useStore(opened);
    return setState({ mode: "memory", problem: storeFault("unavailable", cause) });
  } catch (second) {
    const problem = second instanceof DataError ? second : storeFault("unavailable", second);
    return setState({ mode: "closed", problem });
  }
}
