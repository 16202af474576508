import { useEffect, useState } from "preact/hooks";
import { keptRubric } from "../data/rubric.ts";
import { rubricMarkOf } from "../data/rubric-mark.ts";
import type { Json } from "../data/value.ts";
import type { Rubric } from "../generated/types.ts";
import { type ShopCatalogue, useCatalogue } from "./use-catalogue.ts";

/** The rubric of this id as it is now: the engine's, or the shop's own. */
export const currentRubric = (
  catalogue: ShopCatalogue | undefined,
  id: string | undefined,
): Rubric | undefined => catalogue?.rubrics.find((r) => r.id === id);

/**
 * The rubric an appraisal was made with, from the value kept at its `rubric`: of
 * that version where it is known, else as it is now.
 */
export function useRubric(value: Json | undefined): Rubric | undefined {
  const catalogue = useCatalogue();
  const mark = rubricMarkOf(value);
  const named = asNamed(value);
  const now = currentRubric(catalogue, named?.id);
  const same = now !== undefined && now.version === named?.version;
  const [kept, setKept] = useState<{ hash: string; rubric: Rubric | undefined } | undefined>(undefined);
  const hash = same || !catalogue ? undefined : mark?.hash;
  useEffect(() => {
    if (!mark || hash === undefined) return;
    let gone = false;
    keptRubric(mark).then(
      (rubric) => !gone && setKept({ hash, rubric }),
      () => !gone && setKept({ hash, rubric: undefined }),
    );
    return () => {
      gone = true;
    };
  }, [hash]);
  if (hash === undefined) return now;
  return kept?.hash === hash ? (kept.rubric ?? now) : undefined;
}

function asNamed(value: Json | undefined): { id: string; version: number } | undefined {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return undefined;
  const { id, version } = value;
  return typeof id === "string" && typeof version === "number" ? { id, version } : undefined;
}
