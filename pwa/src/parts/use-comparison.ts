import { useEffect, useState } from "preact/hooks";
import { loadAppraisalFile } from "../data/file.ts";
import { compare } from "../engine/engine.ts";
import type { File as AppraisalFile, Comparison } from "../generated/types.ts";
import { resultWords as words } from "../words/parts.ts";
import { catalogueProblem, useCatalogue } from "./use-catalogue.ts";
import { useTurn } from "./use-turn.ts";
import { useWatch } from "./use-watch.ts";

export interface Compared {
  /** The listings compared, in the order of the sides. */
  ids: string[];
  comparison?: Comparison;
  /** Why there is none. */
  problem?: string;
}

/**
 * The engine's comparison of listings, again after every change to one of them, to
 * the shop, the price book or the comparables. While a newer one is computed the last stays.
 */
export function useComparison(ids: readonly string[]): Compared {
  const catalogue = useCatalogue();
  const turn = useTurn();
  const key = ids.join(",");
  const loaded = useWatch(`compare/${key}/${catalogue ? "ready" : "waiting"}`, async () => {
    if (!catalogue) return undefined;
    const files: AppraisalFile[] = [];
    for (const id of ids) files.push((await loadAppraisalFile(id, catalogue.carried)).file);
    return files;
  });
  const [compared, setCompared] = useState<Compared>({ ids: [] });
  const files = loaded.value;
  useEffect(() => {
    if (!files) return;
    let late = false;
    const tell = (next: Compared) => !late && setCompared(next);
    const asked = key.split(",");
    turn(async () => {
      if (late) return;
      try {
        tell({ ids: asked, comparison: await compare(files) });
      } catch (cause) {
        tell({ ids: asked, problem: cause instanceof Error ? cause.message : String(cause) });
      }
    });
    return () => {
      late = true;
    };
  }, [files, key, turn]);
  const problem = loaded.problem ?? (catalogue ? undefined : catalogueProblem.value && words.noCatalogue);
  const shown = compared.ids.join(",") === key ? compared : { ids: [...ids] };
  return problem ? { ...shown, problem } : shown;
}
