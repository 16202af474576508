import { useEffect, useState } from "preact/hooks";
import { loadAppraisalFile } from "../data/file.ts";
import { compare } from "../engine/engine.ts";
import type { File as AppraisalFile, Comparison } from "../generated/types.ts";
import { resultWords as words } from "../words/parts.ts";
import { catalogueProblem, useCatalogue } from "./use-catalogue.ts";
import { useTurn } from "./use-turn.ts";
import { useWatch } from "./use-watch.ts";

/** Prices tried, cents, by listing; a listing that is not in it has its asking price. */
export type Tried = Readonly<Record<string, number>>;

export interface Compared {
  /** The listings compared, in the order of the sides. */
  ids: string[];
  comparison?: Comparison;
  /** The files behind the sides. */
  files?: AppraisalFile[];
  /** A newer one is being reckoned; the last stays meanwhile. */
  reckoning: boolean;
  /** Why there is none. */
  problem?: string;
}

/** As many quick taps and keys make one reckoning, ms. */
const settle = 60;

/**
 * The engine's comparison of listings, again after every change to one of them, to
 * the shop, the price book or the comparables, and to the prices tried.
 */
export function useComparison(ids: readonly string[], tried: Tried = {}): Compared {
  const catalogue = useCatalogue();
  const turn = useTurn();
  const key = ids.join(",");
  const prices = ids.map((id) => tried[id] ?? null);
  const asked = prices.join(",");
  const loaded = useWatch(`compare/${key}/${catalogue ? "ready" : "waiting"}`, async () => {
    if (!catalogue) return undefined;
    return Promise.all(ids.map(async (id) => (await loadAppraisalFile(id, catalogue.carried)).file));
  });
  const [compared, setCompared] = useState<Omit<Compared, "reckoning"> & { of?: unknown; at?: string }>({
    ids: [],
  });
  const files = loaded.value;
  useEffect(() => {
    if (!files) return;
    let late = false;
    const tell = (next: Omit<Compared, "reckoning">) =>
      !late && setCompared({ ...next, of: files, at: asked });
    const reckon = () =>
      turn(async () => {
        if (late) return;
        try {
          tell({ ids: key.split(","), files, comparison: await compare(files, prices) });
        } catch (cause) {
          tell({
            ids: key.split(","),
            files,
            problem: cause instanceof Error ? cause.message : String(cause),
          });
        }
      });
    const timer = setTimeout(reckon, settle);
    return () => {
      late = true;
      clearTimeout(timer);
    };
  }, [files, key, asked, turn]);
  const problem = loaded.problem ?? (catalogue ? undefined : catalogueProblem.value && words.noCatalogue);
  const { of, at, ...known } = compared;
  const reckoning = of !== files || at !== asked;
  const shown = known.ids.join(",") === key ? { ...known, reckoning } : { ids: [...ids], reckoning: true };
  return problem ? { ...shown, problem } : shown;
}
