import { useMemo } from "preact/hooks";
import type { Check, CheckResult, Rubric, Section } from "../generated/types.ts";
import { useCatalogue } from "./use-catalogue.ts";
import { type FindingView, type ListingDoc, useListing } from "./use-listing.ts";
import { type Judged, useResult } from "./use-result.ts";
import { useRubric } from "./use-rubric.ts";

/** One check in its place on the walkaround. */
export interface Stop {
  check: Check;
  section: Section;
  finding: FindingView;
  /** The engine's word on it, once it has one. */
  judged: CheckResult | undefined;
  /** The grade that counts: given, or proposed by a measurement. */
  grade: number | undefined;
  /** Neither graded nor given a reason. */
  open: boolean;
}

export interface Walk {
  listing: ListingDoc;
  rubric: Rubric | undefined;
  /** Checks that apply, in walking order. */
  stops: Stop[];
  judged: Judged;
  /** The catalogue is here, and the engine has said which checks apply or that it cannot. */
  ready: boolean;
}

function stopsOf(listing: ListingDoc, rubric: Rubric | undefined, judged: Judged): Stop[] {
  const byCheck = new Map(judged.result?.checks.map((c) => [c.check, c]));
  const stops: Stop[] = [];
  for (const section of rubric?.sections ?? []) {
    for (const check of section.checks) {
      const known = byCheck.get(check.id);
      if (known && !known.applies) continue;
      const finding = listing.finding(check.id);
      // What was tapped shows at once; the engine's word on a measurement follows.
      const measured = Object.keys(finding.quantities).length + Object.keys(finding.words).length > 0;
      const grade = finding.grade ?? (measured ? (known?.grade ?? undefined) : undefined);
      const open = grade === undefined && finding.skipped === undefined;
      stops.push({ check, section, finding, judged: known, grade, open });
    }
  }
  return stops;
}

/** The walkaround of a listing, live; undefined until the store has answered. */
export function useWalk(id: string): Walk | undefined {
  const listing = useListing(id);
  const catalogue = useCatalogue();
  const rubric = useRubric(listing?.values.get("rubric"));
  const judged = useResult(id);
  return useMemo(() => {
    if (!listing) return undefined;
    return {
      listing,
      rubric,
      stops: stopsOf(listing, rubric, judged),
      judged,
      ready: catalogue !== undefined && (judged.result !== undefined || judged.problem !== undefined),
    };
  }, [listing, catalogue, rubric, judged.result, judged.problem]);
}

/** The next open check after the given one, round to the start; undefined when none is left. */
export function nextOpen(stops: Stop[], after: string | undefined): Stop | undefined {
  const at = stops.findIndex((s) => s.check.id === after);
  return stops.slice(at + 1).find((s) => s.open) ?? stops.slice(0, Math.max(at, 0)).find((s) => s.open);
}
