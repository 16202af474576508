/** What to push next. Derived from the data each time: there is no queue that could disagree with it. */
import { FUTURE_BOUND_MS, laterStamp, stampMs } from "../data/clock.ts";
import type { Store, StoredRow, SyncMeta } from "../data/db.ts";
import { physical, readDevice, readSync } from "../data/meta.ts";
import { pendingRows } from "../data/read.ts";
import { type Entry, plainEntry, type Row } from "../data/row.ts";
import { byteLength, type Json } from "../data/value.ts";

export interface Batch {
  device: string;
  cursor: { epoch: string; seq: number };
  /** Highest own stamp handed out before this batch. */
  mark: string;
  rows: Row[];
  /** Highest own stamp in it, "" for none. */
  top: string;
  /** Set while whole rows are pushed again. */
  repush: Repush | undefined;
  /** Nothing is left to push after this batch. */
  last: boolean;
}

interface Repush {
  /** Which beginning it belongs to. */
  run: number;
  /** Key of the last row looked at. */
  through: string;
  /** It was the last row of all. */
  final: boolean;
}

export const MAX_ROWS = 500;
/** The server takes 1 MiB; the rest is for the envelope. */
const MAX_BYTES = 1_000_000;
/** Rows of one page of a repush looked at; many are small. */
const PAGE = 200;

/** Chooses the next batch and notes that it is being sent. Give `limit` to send fewer rows. */
export function nextBatch(store: Store, limit = MAX_ROWS): Promise<Batch> {
  return store.write(["rows", "meta", "parked"], async () => {
    const device = await readDevice(store);
    const sync = await readSync(store);
    // The id must stay the same from the first contact on.
    await store.meta.put(device);
    const chosen =
      sync.repush === null
        ? await ownPending(store, limit)
        : await wholeRows(store, sync, limit, physical(device));
    // What was sent is noted before it leaves: when no answer comes, it may be there all the same.
    if (chosen.top > sync.sent) await store.meta.put({ ...sync, sent: chosen.top });
    return {
      device: device.id,
      cursor: { epoch: sync.epoch, seq: sync.seq },
      mark: laterStamp(sync.sent, sync.mark),
      ...chosen,
    };
  });
}

type Chosen = Pick<Batch, "rows" | "top" | "repush" | "last">;

/** Own entries above the mark, oldest first, so that the mark can rise page by page. */
async function ownPending(store: Store, limit: number): Promise<Chosen> {
  const found = await pendingRows(store, limit + 1);
  const own = found.map((row) => ownRow(row));
  const rows = fitting(own, limit);
  return {
    rows,
    top: found[rows.length - 1]?.own ?? "",
    repush: undefined,
    last: rows.length === found.length,
  };
}

function ownRow(row: StoredRow): Row {
  const entry = row.entries.find((e) => e.stamp === row.own);
  return { doc: row.doc, path: row.path, entries: entry ? [plainEntry(entry)] : [], seen: [] };
}

/** Everything held, from everybody, in key order: heals a server that was set back to an older backup. */
async function wholeRows(store: Store, sync: SyncMeta, limit: number, now: number): Promise<Chosen> {
  const after = sync.repush ?? "";
  const found = await store.rows
    .where("key")
    .above(after)
    .limit(Math.min(limit, PAGE) + 1)
    .toArray();
  const parked = new Set(await store.parked.toCollection().primaryKeys());
  const whole = found.map((row) => acceptable(row, parked, now + FUTURE_BOUND_MS));
  const rows = fitting(whole, Math.min(limit, PAGE));
  const top = found.slice(0, rows.length).reduce((most, row) => laterStamp(row.own, most), "");
  return {
    rows: rows.filter((row) => row.entries.length + row.seen.length > 0),
    top,
    repush: {
      run: sync.repushRun,
      through: found[rows.length - 1]?.key ?? after,
      final: rows.length === found.length,
    },
    // Own edits made meanwhile follow in an ordinary batch.
    last: false,
  };
}

/** Without what the server would refuse or refused: one such entry would hold up all the others. */
function acceptable(row: StoredRow, parked: ReadonlySet<string>, latest: number): Row {
  const good = (entry: Entry) => stampMs(entry.stamp) <= latest && !parked.has(`${row.key}|${entry.stamp}`);
  return {
    doc: row.doc,
    path: row.path,
    entries: row.entries.filter(good).map(plainEntry),
    seen: row.seen.filter((stamp) => stampMs(stamp) <= latest),
  };
}

/** As many from the start as fit into one push, but at least one. */
function fitting(rows: Row[], limit: number): Row[] {
  let bytes = 0;
  let n = 0;
  for (const row of rows.slice(0, limit)) {
    bytes += byteLength(JSON.stringify(row as unknown as Json)) + 1;
    if (n > 0 && bytes > MAX_BYTES) break;
    n++;
  }
  return rows.slice(0, n);
}
