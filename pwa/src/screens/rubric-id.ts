import type { ShopCatalogue } from "../parts/use-catalogue.ts";

/** An id near a given one that no rubric on the list has. */
export function freeId(id: string, catalogue: Pick<ShopCatalogue, "rubrics">): string {
  const taken = new Set(catalogue.rubrics.map((r) => r.id));
  const root = `own-${id.replace(/^own-/, "")}`;
  for (let n = 1; ; n++) {
    const next = n === 1 ? root : `${root}-${n}`;
    if (!taken.has(next)) return next;
  }
}
