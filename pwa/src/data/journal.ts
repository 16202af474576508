/**
 * Edits that are asked for and not yet stored for good. A page may be closed between a tap and the end of its
 * transaction, which the browser then drops; what is written here at once survives that and is done at the next start.
 */
import type { PageMeta, Store } from "./db.ts";
import { DataError } from "./error.ts";
import type { Change, EditOptions } from "./write.ts";

export interface Unsaved {
  label: string;
  changes: readonly Change[];
  options: EditOptions;
}

const PREFIX = "asfound-unsaved/";
const LOCK = "asfound-page/";
const MARK = "page:";

const page = Array.from(crypto.getRandomValues(new Uint8Array(8)), (b) =>
  b.toString(16).padStart(2, "0"),
).join("");
let count = 0;

/** Undefined where the browser keeps nothing. */
function shelf(): Storage | undefined {
  try {
    return typeof localStorage === "undefined" ? undefined : localStorage;
  } catch {
    return undefined;
  }
}

/** A noted edit. */
export interface Note {
  /** Put this into the edit's own transaction: it tells that the note was stored. */
  mark: PageMeta;
  /** Call when the edit is stored, or refused and the user told. */
  drop: () => void;
}

/** Notes an edit before it is stored. Edits of a page are stored in the order they were noted. */
export function noteUnsaved(edit: Unsaved): Note {
  const number = ++count;
  const key = `${PREFIX}${page}/${String(number).padStart(9, "0")}`;
  try {
    shelf()?.setItem(key, JSON.stringify(edit));
  } catch {
    // Full: the edit goes on without.
  }
  return { mark: { key: `page:${page}`, stored: number }, drop: () => shelf()?.removeItem(key) };
}

/**
 * Does the edits that pages now gone left behind. Each page holds a lock of its own for as long as it lives, so what
 * is still under way in another tab is left to it. Call once, after the store is open; it answers when every other
 * page was asked for, not when they are gone.
 */
export async function redoUnsaved(store: Store, redo: (edit: Unsaved) => Promise<void>): Promise<void> {
  const storage = shelf();
  const locks = typeof navigator === "undefined" ? undefined : navigator.locks;
  if (!storage || !locks) return;
  void locks.request(LOCK + page, () => new Promise<never>(() => undefined));
  const marked = (await store.meta.toCollection().primaryKeys()).filter((key) => key.startsWith(MARK));
  const owners = new Set([...notes(storage).map(ownerOf), ...marked.map((key) => key.slice(MARK.length))]);
  for (const owner of owners) {
    if (owner !== page) void locks.request(LOCK + owner, () => redoOf(owner, { store, storage, redo }));
  }
}

const notes = (storage: Storage): string[] =>
  Object.keys(storage)
    .filter((key) => key.startsWith(PREFIX))
    .sort();

const ownerOf = (key: string): string => key.slice(PREFIX.length).split("/")[0] ?? "";
const numberOf = (key: string): number => Number(key.slice(PREFIX.length).split("/")[1]);

interface Redoing {
  store: Store;
  storage: Storage;
  redo: (edit: Unsaved) => Promise<void>;
}

/** The edits of one page that is gone, in their order. */
async function redoOf(owner: string, { store, storage, redo }: Redoing): Promise<void> {
  const mark = await store.meta.get(MARK + owner);
  const stored = mark && "stored" in mark ? mark.stored : 0;
  let left = 0;
  for (const key of notes(storage).filter((other) => ownerOf(other) === owner)) {
    // Stored, and only its note was left: doing it again could undo somebody's later edit.
    const edit = numberOf(key) <= stored ? undefined : read(storage.getItem(key));
    // What cannot be stored now is tried again at the next start.
    if (!edit || (await redo(edit).then(() => true, isHopeless))) storage.removeItem(key);
    else left++;
  }
  if (left === 0) await store.meta.delete(MARK + owner);
}

/** A value that the store will never take. */
const isHopeless = (cause: unknown): boolean => cause instanceof DataError && cause.code === "value";

function read(text: string | null): Unsaved | undefined {
  try {
    const { label, changes, options } = JSON.parse(text ?? "") as Partial<Unsaved>;
    return typeof label === "string" && Array.isArray(changes)
      ? { label, changes, options: options ?? {} }
      : undefined;
  } catch {
    return undefined;
  }
}
