import { appraise } from "../engine/engine.ts";
import type { File as AppraisalFile, Result } from "../generated/types.ts";

/** What a card of the list shows of a judgement. */
export type Glance = Pick<Result, "verdict" | "progress">;

const known = new Map<string, { of: string; glance: Glance }>();
let turn: Promise<unknown> = Promise.resolve();

/**
 * Verdict and progress of a listing. Cards ask one after the other, and only
 * again when what was found has changed; prices do not matter to them.
 */
export function glance(id: string, file: AppraisalFile): Promise<Glance> {
  const of = JSON.stringify([file.rubric, file.facts, file.findings]);
  const before = known.get(id);
  if (before?.of === of) return Promise.resolve(before.glance);
  const mine = turn.then(async () => {
    // What it is worth is not asked here, so it need not be worked out.
    const { verdict, progress } = await appraise({ ...file, comparables: [] });
    const found = { verdict, progress };
    known.set(id, { of, glance: found });
    return found;
  });
  turn = mine.catch(() => undefined);
  return mine;
}
