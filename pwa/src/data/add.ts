import { current, type Store, type UndoChange } from "./db.ts";
import { rowValue } from "./row.ts";
import { tellSaved } from "./saved.ts";
import { type Change, checked, type Desk, inOneGo, keyOf, remember } from "./write.ts";

/** Rows of one transaction: few enough that the page answers in between, on a slow phone too. */
const CHUNK = 250;

export interface Added {
  added: number;
  /** There is a value already; it stays as it is. */
  there: number;
}

/**
 * Saves values where there is none yet, some hundred at a time, with one undo step for all of them. Where it fails
 * half-way, what was added stays: doing it again adds the rest. `told` hears how far it is.
 */
export async function addAbsent(
  label: string,
  changes: readonly Change[],
  told: (done: number) => void = () => undefined,
): Promise<Added> {
  const store = current();
  // What is given twice is added once.
  const wanted = [...new Map(changes.map((change) => [keyOf(change), checked(change)])).values()];
  const all: Added = { added: 0, there: changes.length - wanted.length };
  let step: number | undefined;
  try {
    for (let from = 0; from < wanted.length; from += CHUNK) {
      const part = wanted.slice(from, from + CHUNK);
      const before: number | undefined = step;
      const saved = await inOneGo(store, async (desk) => addPart({ store, desk, label, step: before }, part));
      step = saved.step;
      all.added += saved.added;
      all.there += part.length - saved.added;
      told(from + part.length);
      // Taps and drawing come in between.
      await new Promise((go) => setTimeout(go));
    }
  } finally {
    if (all.added > 0) tellSaved();
  }
  return all;
}

interface Adding {
  store: Store;
  desk: Desk;
  label: string;
  /** The undo step of the parts before. */
  step: number | undefined;
}

async function addPart(
  { store, desk, label, step }: Adding,
  part: readonly ReturnType<typeof checked>[],
): Promise<{ added: number; step: number | undefined }> {
  const rows = await store.rows.bulkGet(part.map(keyOf));
  const done = await desk.put(
    part.filter((_, i) => {
      const row = rows[i];
      return row === undefined || rowValue(row) === null;
    }),
  );
  if (done.length === 0) return { added: 0, step };
  const grown = step !== undefined && (await growStep(store, step, done));
  return { added: done.length, step: grown ? step : await remember(store, label, done, false) };
}

/** False where the step was taken back or fell off meanwhile. */
async function growStep(store: Store, id: number, changes: readonly UndoChange[]): Promise<boolean> {
  const found = await store.undo.get(id);
  if (!found) return false;
  await store.undo.put({ ...found, at: Date.now(), changes: [...found.changes, ...changes] });
  return true;
}
