import type { Catalogue, Comparable } from "../generated/types.ts";
import { comparablesWords as words } from "../words/comparables.ts";

/** What tells one comparable from the next, in one line. */
export function comparableAbout(item: Comparable, catalogue: Catalogue): string {
  const basis = words.bases.find((b) => b.id === item.basis)?.title ?? item.basis;
  const condition = catalogue.conditions.find((c) => c.id === item.condition)?.title;
  const complete = catalogue.completeness.find((c) => c.id === item.complete)?.title;
  return words.summary(
    [
      item.off ? words.off : "",
      words.on(basis, item.date ?? ""),
      item.maker ?? "",
      item.made ? words.madeIn(item.made) : "",
      item.capacity ? `${item.capacity.n} ${item.capacity.unit}` : "",
      item.hours ? words.hoursOf(String(item.hours)) : "",
      condition ?? "",
      complete ?? "",
      item.place ?? "",
      item.distance ? words.away(`${item.distance.n} ${item.distance.unit}`) : "",
    ].filter(Boolean),
  );
}
