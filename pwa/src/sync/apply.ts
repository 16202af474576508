/** Taking in what the server answered, in one transaction with the cursor: a page is applied whole or not at all. */
import { absorb } from "../data/absorb.ts";
import type { Store, SyncMeta } from "../data/db.ts";
import { lift, readDevice, readSync, repushAll } from "../data/meta.ts";
import { type Row, rowKey, stampsOf } from "../data/row.ts";
import type { Batch } from "./batch.ts";

export interface Refused {
  doc: string;
  path: string;
  stamp: string;
  reason: string;
}

export interface Reply {
  /** ms since epoch by the server */
  now: number;
  epoch: string;
  seq: number;
  more: boolean;
  reread: boolean;
  refused: Refused[];
  rows: Row[];
}

/** offset: server time minus device time, ms. */
export function applyReply(store: Store, batch: Batch, reply: Reply, offset: number): Promise<void> {
  return store.write(["rows", "meta", "parked", "photos", "heads"], async () => {
    const device = { ...(await readDevice(store)), offset };
    await absorb(store, reply.rows, device.id);
    await park(store, batch, reply.refused);
    await store.meta.put(lift(device, stampsOf(reply.rows)));
    const sync = await readSync(store);
    // An answer to a push under an id that was given up meanwhile acknowledges nothing.
    const acknowledges = batch.device === device.id && !batch.repush && batch.top > sync.mark;
    const mark = acknowledges ? batch.top : sync.mark;
    // A first contact rereads too, but then everything of our own is still to be sent anyway.
    const setBack = reply.reread && sync.epoch !== "";
    if (setBack) await store.photos.toCollection().modify({ uploaded: 0 });
    const next = { ...sync, epoch: reply.epoch, seq: reply.seq, mark, contact: Date.now() };
    await store.meta.put(setBack ? repushAll(next) : { ...next, repush: repushAfter(sync, batch) });
  });
}

/** Where the pushing of whole rows stands. One begun anew during this round (an import) stays at its start. */
export function repushAfter(sync: SyncMeta, batch: Batch): string | null {
  if (!batch.repush || batch.repush.run !== sync.repushRun) return sync.repush;
  return batch.repush.final ? null : batch.repush.through;
}

/** What was refused is set aside and shown, and the rest goes on. */
export async function park(store: Store, batch: Batch, refused: readonly Refused[]): Promise<void> {
  const sent = new Map(batch.rows.map((row) => [rowKey(row.doc, row.path), row]));
  for (const { doc, path, stamp, reason } of refused) {
    const row = rowKey(doc, path);
    // An empty stamp means the whole row.
    const entries = (sent.get(row)?.entries ?? []).filter((entry) => stamp === "" || stamp === entry.stamp);
    for (const entry of entries) {
      await store.parked.put({
        key: `${row}|${entry.stamp}`,
        row,
        doc,
        path,
        stamp: entry.stamp,
        reason,
        at: Date.now(),
      });
    }
  }
}
