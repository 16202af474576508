import { useEffect, useRef, useState } from "preact/hooks";
import { loadAppraisalFile } from "../data/file.ts";
import { listingDoc } from "../data/id.ts";
import { appraise } from "../engine/engine.ts";
import type { File as AppraisalFile, Result } from "../generated/types.ts";
import { resultWords as words } from "../words/parts.ts";
import { catalogueProblem, useCatalogue } from "./use-catalogue.ts";
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
 * shop, the price book or the comparables. `price` (cents) asks for another
 * price than the asking one. While a newer one is computed the last stays.
 */
export function useResult(id: string, price?: number): Judged {
  const catalogue = useCatalogue();
  const ready = catalogue ? "ready" : "waiting";
  const loaded = useWatch(`result/${id}/${ready}`, async () =>
    catalogue ? await loadAppraisalFile(listingDoc(id), catalogue.shop) : undefined,
  );
  const slot = `${id}/${price ?? ""}`;
  const [judged, setJudged] = useState<{ slot: string; judged: Judged }>({
    slot,
    judged: last.get(slot) ?? {},
  });
  const line = useRef<{ busy: boolean; waiting?: () => void }>({ busy: false });
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
    const ask = async () => {
      if (late) return;
      line.current.busy = true;
      try {
        const judgement = { result: await appraise(file, price), file };
        remember(slot, judgement);
        tell(judgement);
      } catch (cause) {
        tell({ file, problem: cause instanceof Error ? cause.message : String(cause) });
      }
      line.current.busy = false;
      const next = line.current.waiting;
      delete line.current.waiting;
      next?.();
    };
    // One question at a time: quick taps must not pile up before the engine.
    if (line.current.busy) line.current.waiting = () => void ask();
    else void ask();
    return () => {
      late = true;
    };
  }, [file, price, slot]);
  const shown = judged.slot === slot ? judged.judged : (last.get(slot) ?? {});
  const problem =
    loaded.problem ?? (catalogue ? shown.problem : catalogueProblem.value && words.noCatalogue) ?? undefined;
  return { ...shown, ...(problem ? { problem } : {}) };
}
