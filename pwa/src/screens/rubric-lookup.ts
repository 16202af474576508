import { useMemo } from "preact/hooks";
import type { Json } from "../data/value.ts";
import type { Catalogue, Check, Preparation, Remedy, Rubric } from "../generated/types.ts";
import { useCatalogue } from "../parts/use-catalogue.ts";
import { useRubric } from "../parts/use-rubric.ts";

/** The rubric of a result by name: titles of what its lines refer to. */
export interface Lookup {
  catalogue: Catalogue | undefined;
  rubric: Rubric | undefined;
  check(id: string): Check | undefined;
  remedy(id: string): Remedy | undefined;
  preparation(id: string): Preparation | undefined;
  /** The trade's title, or its id where the catalogue does not know it. */
  trade(id: string): string;
  grade(n: number): string;
}

function lookupOf(catalogue: Catalogue | undefined, rubric: Rubric | undefined): Lookup {
  const checks = new Map(rubric?.sections.flatMap((s) => s.checks.map((c) => [c.id, c] as const)));
  const remedies = new Map(rubric?.remedies.map((r) => [r.id, r]));
  const preparations = new Map(rubric?.preparations.map((p) => [p.id, p]));
  return {
    catalogue,
    rubric,
    check: (id) => checks.get(id),
    remedy: (id) => remedies.get(id),
    preparation: (id) => preparations.get(id),
    trade: (id) => catalogue?.trades.find((t) => t.id === id)?.title ?? id,
    grade: (n) => catalogue?.grades[n] ?? "",
  };
}

/** `made` is the value kept at a listing's `rubric`. */
export function useLookup(made: Json | undefined): Lookup {
  const catalogue = useCatalogue();
  const rubric = useRubric(made);
  return useMemo(() => lookupOf(catalogue, rubric), [catalogue, rubric]);
}
