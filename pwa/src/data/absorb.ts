import { type Store, type StoredRow, stored } from "./db.ts";
import { putRows } from "./head.ts";
import { merge, type Row, rowKey, rowText } from "./row.ts";

/** Merges rows from elsewhere into the store; gives those that changed by it. In a transaction that holds `rows` and `heads`. */
export async function absorb(store: Store, rows: readonly Row[], device: string): Promise<StoredRow[]> {
  if (rows.length === 0) return [];
  const here = await store.rows.bulkGet(rows.map((row) => rowKey(row.doc, row.path)));
  const changed: StoredRow[] = [];
  for (const [i, row] of rows.entries()) {
    const old = here[i];
    const merged = old ? merge(old, row) : row;
    if (!old || rowText(merged) !== rowText(old)) changed.push(stored(merged, device));
  }
  await putRows(store, changed);
  return changed;
}
