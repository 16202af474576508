import { useEffect, useState } from "preact/hooks";
import { type Carried, loadFindings } from "../data/file.ts";
import type { ListingSummary } from "../data/read.ts";
import { appraise } from "../engine/engine.ts";
import type { Result } from "../generated/types.ts";

/** What a card of the list shows of a judgement. */
export type Glance = Pick<Result, "verdict" | "progress">;

interface Known {
  /** The stamp of what it was judged by. */
  judged: string;
  glance: Glance;
}

/** By listing. */
const known = new Map<string, Known>();
let turn: Promise<unknown> = Promise.resolve();

/**
 * Verdict and progress of a listing, asked for while its card is on the screen: one card after the other, and
 * again only when kind, facts or findings have changed. Prices do not matter to them.
 */
export function useGlance(
  listing: ListingSummary,
  carried: Carried | undefined,
  wanted: boolean,
): Glance | undefined {
  const { doc, judged } = listing;
  const [mine, setMine] = useState<Known | undefined>(undefined);
  const before = known.get(doc);
  const have = before?.judged === judged;
  useEffect(() => {
    if (have || !carried || !wanted) return;
    let gone = false;
    turn = turn
      .then(async () => {
        // Flung past before it was its turn.
        if (gone) return;
        const { file, certain } = await loadFindings(doc, carried);
        const { verdict, progress } = await appraise(file);
        const found = { judged, glance: { verdict, progress } };
        if (certain) known.set(doc, found);
        if (!gone) setMine(found);
      })
      .catch(() => undefined);
    return () => {
      gone = true;
    };
  }, [doc, judged, have, carried, wanted]);
  // A verdict from before the last finding is none.
  if (have) return before.glance;
  return mine?.judged === judged ? mine.glance : undefined;
}
