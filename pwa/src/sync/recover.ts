/** Two faults of a device's stamps, put right on entries that nobody else has seen yet. */
import {
  type Clock,
  endOfMs,
  FUTURE_BOUND_MS,
  formatStamp,
  newDevice,
  stampClock,
  stampDevice,
  tick,
} from "../data/clock.ts";
import {
  type DeviceMeta,
  LONG_LIMIT_MS,
  type ParkedRow,
  type Store,
  type StoredRow,
  stored,
} from "../data/db.ts";
import { putRows } from "../data/head.ts";
import { alone } from "../data/lock.ts";
import { physical, readDevice, readSync } from "../data/meta.ts";
import { type Entry, join, stampsOf } from "../data/row.ts";
import { CLOCK_LOCK } from "../data/write.ts";

/**
 * The clock was ahead: own entries beyond the bound get new stamps by the server's time, in their old order, each
 * above what it replaced. Safe because the server took none of them. Tells how many there were.
 */
export function restamp(store: Store, serverNow: number, offset: number): Promise<number> {
  const bound = endOfMs(serverNow + FUTURE_BOUND_MS);
  return inOneGo(store, async () => {
    const device = { ...(await readDevice(store)), offset };
    const sync = await readSync(store);
    const ahead = await store.rows.where("own").above(bound).sortBy("own");
    let highest = sync.mark;
    let sent = sync.mark;
    await store.rows.each((row) => {
      for (const stamp of stampsOf([row])) if (stamp > highest && stamp <= bound) highest = stamp;
      if (row.own > sent && row.own <= bound) sent = row.own;
    });
    const start: Clock = highest === "" ? { l: 0, c: 0 } : stampClock(highest);
    const rows = ahead.map((row) => withoutAhead(row, device.id, bound));
    const last = await stampAnew(store, rows, device, { ...device, ...start });
    await store.meta.put(last);
    await store.meta.put({ ...sync, sent: sync.sent > bound ? sent : sync.sent });
    return ahead.length;
  });
}

/**
 * Another device has this one's id (a restored or copied phone): it takes a new one, and what is not yet on the
 * server is stamped anew under it, in its old order. Nothing is dropped on either side.
 */
export function rekey(store: Store): Promise<number> {
  return inOneGo(store, async () => {
    const old = await readDevice(store);
    const sync = await readSync(store);
    const device = { ...old, id: newDevice() };
    const parked = new Set(await store.parked.toCollection().primaryKeys());
    const rows = await store.rows.where("own").above("").sortBy("own");
    const unsent = rows.filter((row) => row.own > sync.mark || parked.has(`${row.key}|${row.own}`));
    const published = rows.filter((row) => !unsent.includes(row));
    await putRows(
      store,
      published.map((row) => stored(row, device.id)),
    );
    await store.meta.put(await stampAnew(store, unsent, device, device));
    // The new id has sent nothing.
    await store.meta.put({ ...sync, mark: "", sent: "" });
    return unsent.length;
  });
}

const inOneGo = <T>(store: Store, work: () => Promise<T>): Promise<T> =>
  alone(CLOCK_LOCK, () => store.write(["rows", "meta", "parked", "undo", "heads"], work, LONG_LIMIT_MS));

/** Own earlier stamps beyond the bound, named as replaced, were never taken either: they would outrank the new ones. */
function withoutAhead(row: StoredRow, device: string, bound: string): StoredRow {
  const keep = (stamp: string) => stamp <= bound || stampDevice(stamp) !== device;
  const entries = row.entries.map((entry) => {
    if (stampDevice(entry.stamp) !== device) return entry;
    const { settles, ...rest } = entry;
    const kept = (settles ?? []).filter(keep);
    return {
      ...rest,
      base: keep(entry.base) ? entry.base : "",
      ...(kept.length > 0 ? { settles: kept } : {}),
    };
  });
  return { ...row, entries, seen: row.seen.filter(keep) };
}

/** Rows come in the order of their own stamps. Gives the device with the clock's last reading. */
async function stampAnew(
  store: Store,
  rows: readonly StoredRow[],
  device: DeviceMeta,
  start: DeviceMeta,
): Promise<DeviceMeta> {
  const renamed = new Map<string, string>();
  const changed: StoredRow[] = [];
  let last: DeviceMeta = { ...start, id: device.id };
  for (const row of rows) {
    const old = row.entries.find((entry) => entry.stamp === row.own);
    if (!old) continue;
    last = { ...last, ...tick(aboveAll(last, old), physical(device)) };
    const stamp = formatStamp(last, device.id);
    renamed.set(old.stamp, stamp);
    const others = row.entries.filter((entry) => entry !== old);
    changed.push(stored(join(row.doc, row.path, [...others, { ...old, stamp }], row.seen), device.id));
  }
  await putRows(store, changed);
  await renameElsewhere(store, renamed);
  return last;
}

/** An entry must be above what it replaced and settled. */
function aboveAll(last: Clock, entry: Entry): Clock {
  let highest = last;
  for (const stamp of [entry.base, ...(entry.settles ?? [])]) {
    if (stamp === "") continue;
    const clock = stampClock(stamp);
    if (clock.l > highest.l || (clock.l === highest.l && clock.c > highest.c)) highest = clock;
  }
  return highest;
}

/** Undo steps and refused entries name entries by their stamps. */
async function renameElsewhere(store: Store, renamed: ReadonlyMap<string, string>): Promise<void> {
  await store.undo.toCollection().modify((step) => {
    const rename = (stamp: string) => renamed.get(stamp) ?? stamp;
    step.changes = step.changes.map((c) => ({ ...c, stamp: rename(c.stamp), before: rename(c.before) }));
  });
  const parked = (await store.parked.toArray()).filter((one) => renamed.has(one.stamp));
  await store.parked.bulkDelete(parked.map((one) => one.key));
  await store.parked.bulkPut(
    parked.map((one): ParkedRow => {
      const stamp = renamed.get(one.stamp) ?? one.stamp;
      return { ...one, stamp, key: `${one.row}|${stamp}` };
    }),
  );
}
