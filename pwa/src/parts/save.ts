import type { JsonInput } from "../data/value.ts";
import { type Change, edit } from "../data/write.ts";

/** Saves changes; answers undefined, or why not in words for the field. */
export async function save(
  label: string,
  changes: readonly Change[],
  options?: { coalesce?: boolean; undoable?: boolean },
): Promise<string | undefined> {
  try {
    await edit(label, changes, options ?? {});
    return undefined;
  } catch (cause) {
    return cause instanceof Error ? cause.message : String(cause);
  }
}

/** Saves one value; typing into the same field joins into one undo step. */
export const saveValue = (label: string, doc: string, path: string, value: JsonInput) =>
  save(label, [{ doc, path, value }], { coalesce: true });
