import { doc } from "../data/read.ts";
import type { Values } from "../data/reader.ts";
import type { Json, JsonInput } from "../data/value.ts";
import { checkFigures, EngineError } from "../engine/engine.ts";
import type { CheckRequest } from "../generated/types.ts";
import { saveValue } from "../parts/save.ts";

/** What the engine has against some figures, in words for the field; undefined where nothing. */
async function refused(figures: CheckRequest): Promise<string | undefined> {
  try {
    await checkFigures(figures);
    return undefined;
  } catch (cause) {
    const message = cause instanceof Error ? cause.message : String(cause);
    const field = cause instanceof EngineError && cause.field ? `${cause.field}: ` : "";
    return message.startsWith(field) ? message.slice(field.length) : message;
  }
}

/**
 * Why a change must not be kept, if so: every judgement would refuse what it makes. What was wrong before
 * it is no reason to refuse another field.
 */
export async function refusedChange(before: CheckRequest, after: CheckRequest): Promise<string | undefined> {
  const why = await refused(after);
  return why === undefined || why === (await refused(before)) ? undefined : why;
}

/** One after the other: two fields left at the same moment are checked together. */
let last: Promise<unknown> = Promise.resolve();

/** Keeps one value, unless every judgement would refuse what it makes: the problem is answered in words. */
export function keepChecked(
  at: Place,
  value: JsonInput,
  figures: (values: Values) => CheckRequest,
): Promise<string | undefined> {
  const kept = last.then(() => keep(at, value, figures));
  last = kept.catch(() => undefined);
  return kept;
}

interface Place {
  label: string;
  doc: string;
  path: string;
}

async function keep(
  at: Place,
  value: JsonInput,
  figures: (values: Values) => CheckRequest,
): Promise<string | undefined> {
  const { values } = await doc(at.doc);
  const next = new Map(values);
  if (value === null) next.delete(at.path);
  else next.set(at.path, value as Json);
  const why = await refusedChange(figures(values), figures(next));
  return why ?? saveValue(at.label, at.doc, at.path, value);
}
