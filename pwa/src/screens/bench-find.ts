import type { Catalogue, LimitDefinition } from "../generated/types.ts";
import { matches } from "./find-field.tsx";

/** A subject with those of its limits that are shown. */
export interface BenchSubject {
  id: string;
  title: string;
  limits: LimitDefinition[];
}

/**
 * Subjects with the limits that a search finds, in the catalogue's order: by their
 * title, name, subject, or what they ask for. Subjects without any are left out.
 */
export function foundLimits(
  catalogue: Pick<Catalogue, "subjects" | "limits">,
  search: string,
): BenchSubject[] {
  return catalogue.subjects
    .map(({ id, title, limits }) => ({
      id,
      title,
      limits: limits
        .flatMap((name) => catalogue.limits.find((l) => l.name === name) ?? [])
        .filter((l) => search.trim() === "" || matches(textOf(l, title), search.trim())),
    }))
    .filter((s) => s.limits.length > 0);
}

const textOf = (l: LimitDefinition, subject: string) =>
  [l.title, l.name, subject, ...(l.called ?? []), ...l.quantities.map((q) => q.title)].join(" ");
