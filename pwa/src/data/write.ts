import { type Clock, formatStamp, isStamp, stampClock, tick } from "./clock.ts";
import {
  current,
  type DeviceMeta,
  type Store,
  type StoredRow,
  type SyncMeta,
  stored,
  type UndoChange,
} from "./db.ts";
import { DataError } from "./error.ts";
import { putRows } from "./head.ts";
import { noteUnsaved } from "./journal.ts";
import { alone } from "./lock.ts";
import { physical, readDevice, readSync } from "./meta.ts";
import {
  type Entry,
  emptyRow,
  highestPerDevice,
  isDoc,
  isPath,
  losers,
  merge,
  type Row,
  rowKey,
  rowValue,
  winner,
} from "./row.ts";
import { tellSaved } from "./saved.ts";
import { cleanValue, type Json, type JsonInput, sameValue } from "./value.ts";

export { onSave } from "./saved.ts";

import { saveWords } from "../words/data.ts";

export const CLOCK_LOCK = "asfound-clock";

export interface Change {
  doc: string;
  path: string;
  /** null removes. */
  value: JsonInput;
}

export interface EditOptions {
  /** false: leave no undo step. Default true. */
  undoable?: boolean;
  /** true: join the previous undo step when it has the same label and paths and is under 10 s old (typing). */
  coalesce?: boolean;
}

export interface Undone {
  label: string;
  /** Fields put back. */
  undone: number;
  /** Fields changed since by somebody else, left as they are. */
  kept: { doc: string; path: string }[];
}

export interface UndoStep {
  id: number;
  label: string;
  /** ms since epoch */
  at: number;
}

const UNDO_STEPS = 50;
const COALESCE_MS = 10_000;

/** A change with its value cleaned; settle also takes in the values that lost. */
interface Wanted {
  doc: string;
  path: string;
  value: Json;
  settle?: boolean;
}

/** Saves changes at once, all or none. Resolves when they are on this device for good. Rejects with DataError. */
export async function edit(
  label: string,
  changes: readonly Change[],
  options: EditOptions = {},
): Promise<void> {
  const store = current();
  const wanted = changes.map(checked);
  if (new Set(wanted.map(keyOf)).size < wanted.length) {
    throw new DataError("value", saveWords.twice(label));
  }
  const note = noteUnsaved({ label, changes: wanted, options });
  const saved = await inOneGo(store, async (desk) => {
    await store.meta.put(note.mark);
    const done = await desk.put(wanted);
    if (done.length > 0 && options.undoable !== false)
      await remember(store, label, done, options.coalesce === true);
    return done.length;
  }).finally(note.drop);
  if (saved > 0) tellSaved();
}

/** A change fit to be stored. Throws DataError. */
export function checked(change: Change): Wanted {
  if (!isDoc(change.doc)) throw new DataError("value", saveWords.noDocument(change.doc));
  if (!isPath(change.path)) throw new DataError("value", saveWords.noField(change.path));
  return { doc: change.doc, path: change.path, value: cleanValue(change.path, change.value) };
}

export const keyOf = (place: { doc: string; path: string }): string => rowKey(place.doc, place.path);

/** What one writing transaction has at hand. */
export interface Desk {
  /** Stamps and stores; tells what was there before, without fields that were so already. */
  put(wanted: readonly Wanted[]): Promise<UndoChange[]>;
}

export function inOneGo<T>(store: Store, work: (desk: Desk) => Promise<T>): Promise<T> {
  return alone(CLOCK_LOCK, () =>
    store.write(["rows", "meta", "undo", "parked", "heads"], () =>
      work({ put: (wanted) => put(store, wanted) }),
    ),
  );
}

async function put(store: Store, wanted: readonly Wanted[]): Promise<UndoChange[]> {
  const keys = wanted.map(keyOf);
  let device = await readDevice(store);
  const sync = await readSync(store);
  const found = await store.rows.bulkGet(keys);
  const parked = await store.parked.where("row").anyOf(keys).toArray();
  const parkedStamps = new Set(parked.map((p) => p.stamp));
  const rows: StoredRow[] = [];
  const done: UndoChange[] = [];
  for (const [i, want] of wanted.entries()) {
    const row: Row = found[i] ?? emptyRow(want.doc, want.path);
    const settling = want.settle === true && losers(row).length > 0;
    if (!settling && sameValue(rowValue(row), want.value)) continue;
    const last = laterClock(device, winner(row)?.stamp);
    device = { ...device, ...tick(last, physical(device)) };
    const stamp = formatStamp(device, device.id);
    if (!isStamp(stamp)) throw new DataError("value", saveWords.farDate);
    const entry = nextEntry(row, want, stamp, { device, sync, parkedStamps });
    rows.push(stored(merge(row, { ...emptyRow(row.doc, row.path), entries: [entry] }), device.id));
    done.push({
      doc: want.doc,
      path: want.path,
      previous: rowValue(row),
      before: winner(row)?.stamp ?? "",
      stamp,
    });
  }
  if (rows.length === 0) return done;
  await putRows(store, rows);
  await store.meta.put(device);
  // A parked entry that is replaced is no longer there to be refused.
  const replaced = new Set(rows.map((row) => row.key));
  await store.parked.bulkDelete(parked.filter((p) => replaced.has(p.row)).map((p) => p.key));
  return done;
}

/** Every entry must be above the one it replaces, however the clock stands. */
function laterClock(own: Clock, stamp: string | undefined): Clock {
  if (stamp === undefined) return own;
  const other = stampClock(stamp);
  return other.l > own.l || (other.l === own.l && other.c > own.c) ? other : own;
}

interface Standing {
  device: DeviceMeta;
  sync: SyncMeta;
  parkedStamps: ReadonlySet<string>;
}

/**
 * The new entry over a row. The base is what the user saw: the winner. But where the winner is an own entry
 * that the server has not got, nobody else will ever see that one: its own base is carried forward.
 */
function nextEntry(row: Row, want: Wanted, stamp: string, standing: Standing): Entry {
  const top = winner(row);
  const own = row.entries.find((entry) => entry.stamp.endsWith(standing.device.id));
  const unsent =
    own && (own.stamp > standing.sync.mark || standing.parkedStamps.has(own.stamp)) ? own : undefined;
  const covered: string[] = [];
  let base = top?.stamp ?? "";
  if (unsent) {
    if (top === unsent) base = unsent.base;
    covered.push(unsent.base, ...(unsent.settles ?? []));
    // Its answer may have been lost on the way: then it is on the server, and is named as replaced.
    if (unsent.stamp <= standing.sync.sent) covered.push(unsent.stamp);
  }
  if (want.settle) covered.push(...losers(row).map((entry) => entry.stamp));
  const settles = highestPerDevice(covered.filter((other) => other !== base && other !== ""));
  return { value: want.value, stamp, base, ...(settles.length > 0 ? { settles } : {}) };
}

/** Writes an undo step, or joins the last one; its id. In a transaction that holds `undo`. */
export async function remember(
  store: Store,
  label: string,
  changes: UndoChange[],
  coalesce: boolean,
): Promise<number> {
  const at = Date.now();
  const last = await store.undo.orderBy("id").last();
  if (
    coalesce &&
    last &&
    last.label === label &&
    Math.abs(at - last.at) < COALESCE_MS &&
    samePlaces(last, changes)
  ) {
    const first = new Map(last.changes.map((change) => [keyOf(change), change]));
    const joined = changes.map((change) => ({
      ...(first.get(keyOf(change)) ?? change),
      stamp: change.stamp,
    }));
    await store.undo.put({ ...last, at, changes: joined });
    return last.id;
  }
  const id = await store.undo.add({ label, at, changes });
  await store.undo
    .where("id")
    .belowOrEqual(id - UNDO_STEPS)
    .delete();
  return id;
}

const samePlaces = (step: { changes: UndoChange[] }, changes: UndoChange[]): boolean =>
  step.changes.length === changes.length &&
  step.changes.every((c, i) => changes[i] && keyOf(c) === keyOf(changes[i]));

export async function lastUndo(): Promise<UndoStep | undefined> {
  const store = current();
  const last = await store.read(["undo"], () => store.undo.orderBy("id").last());
  return last && { id: last.id, label: last.label, at: last.at };
}

/** Takes back the last step; undefined when there is none. */
export async function undo(): Promise<Undone | undefined> {
  const store = current();
  const undone = await inOneGo(store, async (desk) => {
    const step = await store.undo.orderBy("id").last();
    if (!step) return undefined;
    const rows = await store.rows.bulkGet(step.changes.map(keyOf));
    const mine = step.changes.filter((change, i) => {
      const row = rows[i];
      return row !== undefined && winner(row)?.stamp === change.stamp;
    });
    const done = await desk.put(mine.map(({ doc, path, previous }) => ({ doc, path, value: previous })));
    await store.undo.delete(step.id);
    await passOn(store, mine, done);
    const kept = step.changes
      .filter((change) => !mine.includes(change))
      .map(({ doc, path }) => ({ doc, path }));
    return { label: step.label, undone: mine.length, kept };
  });
  if (undone && undone.undone > 0) tellSaved();
  return undone;
}

/** The value put back has a new stamp: the step that once wrote it must know it as its own. */
async function passOn(
  store: Store,
  undone: readonly UndoChange[],
  done: readonly UndoChange[],
): Promise<void> {
  const now = new Map(done.map((change) => [keyOf(change), change.stamp]));
  const renamed = new Map(undone.map((change) => [change.before, now.get(keyOf(change)) ?? change.stamp]));
  renamed.delete("");
  await store.undo.toCollection().modify((step) => {
    step.changes = step.changes.map((change) => ({
      ...change,
      stamp: renamed.get(change.stamp) ?? change.stamp,
    }));
  });
}

/** Makes the losing value with this stamp the value again and settles the conflict. */
export async function bringBack(doc: string, path: string, stamp: string): Promise<void> {
  await settleWith(saveWords.bringBack, doc, path, (row) => {
    const chosen = row.entries.find((entry) => entry.stamp === stamp);
    if (!chosen) {
      throw new DataError("missing", saveWords.settledMeanwhile);
    }
    return chosen.value;
  });
}

/** Keeps the winning value and settles the conflict. */
export async function settle(doc: string, path: string): Promise<void> {
  await settleWith(saveWords.keep, doc, path, rowValue);
}

async function settleWith(
  label: string,
  doc: string,
  path: string,
  choose: (row: Row) => Json,
): Promise<void> {
  const store = current();
  const saved = await inOneGo(store, async (desk) => {
    const row = (await store.rows.get(rowKey(doc, path))) ?? emptyRow(doc, path);
    const done = await desk.put([{ doc, path, value: choose(row), settle: true }]);
    if (done.length > 0) await remember(store, label, done, false);
    return done.length;
  });
  if (saved > 0) tellSaved();
}
