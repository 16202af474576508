import { checkFigures, EngineError } from "../engine/engine.ts";
import type { CheckRequest } from "../generated/types.ts";

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
