import { useEffect, useState } from "preact/hooks";
import { loadAppraisalFile } from "../data/file.ts";
import { listingDoc } from "../data/id.ts";
import { appraise } from "../engine/engine.ts";
import type { File as AppraisalFile, Result } from "../generated/types.ts";
import { resultWords as words } from "../words/parts.ts";
import { catalogueProblem, useCatalogue } from "./use-catalogue.ts";
import { useTurn } from "./use-turn.ts";
import { useWatch } from "./use-watch.ts";

export interface Judged {
  result?: Result;
  file?: AppraisalFile;
  /** Why there is no result, or what of the records could not be read. */
  problem?: string;
}

/** The last judgements, shown at once when a screen is opened again. */
const last = new Map<string, Judged>();

function remember(slot: string, judged: Judged): void {
  last.delete(slot);
  last.set(slot, judged);
  const oldest = last.keys().next().value;
  if (last.size > 24 && oldest !== undefined) last.delete(oldest);
}

/**
 * The engine's judgement of a listing, again after every change to it, to the
 * shop, the price book or the comparables. While a newer one is computed the last stays.
 */
export function useResult(
  id: string,
  asked: {
    /** Another price than the asking one, cents. */
    price?: number | undefined;
    /** Asks for a plan of so many minutes as well. */
    minutes?: number | undefined;
  } = {},
): Judged {
  const { price, minutes } = asked;
  const turn = useTurn();
  const catalogue = useCatalogue();
  const ready = catalogue ? "ready" : "waiting";
  const loaded = useWatch(`result/${id}/${ready}`, async () =>
    catalogue ? await loadAppraisalFile(listingDoc(id), catalogue.carried) : undefined,
  );
  const slot = `${id}/${price ?? ""}`;
  const [judged, setJudged] = useState<{ slot: string; judged: Judged }>({
    slot,
    judged: last.get(slot) ?? {},
  });
  const file = loaded.value?.file;
  useEffect(() => {
    if (!file) return;
    let late = false;
    const tell = (next: Judged) => {
      if (!late) setJudged({ slot, judged: next });
    };
    if (file.rubric.id === "") {
      tell({ file, problem: words.noRubric });
      return;
    }
    turn(async () => {
      if (late) return;
      try {
        const judgement = { result: await appraise(file, { price, minutes }), file };
        remember(slot, judgement);
        tell(judgement);
      } catch (cause) {
        tell({ file, problem: cause instanceof Error ? cause.message : String(cause) });
      }
    });
    return () => {
      late = true;
    };
  }, [file, price, minutes, slot, turn]);
  const shown = judged.slot === slot ? judged.judged : (last.get(slot) ?? {});
  const problem =
    loaded.problem ?? (catalogue ? shown.problem : catalogueProblem.value && words.noCatalogue) ?? undefined;
  return { ...shown, ...(problem ? { problem } : {}) };
}
