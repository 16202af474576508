import { Hazard } from "../parts/hazard.tsx";
import { Notches } from "../parts/notches.tsx";
import { useCatalogue } from "../parts/use-catalogue.ts";
import type { Stop } from "../parts/use-walk.ts";
import { walkWords as words } from "../words/walkaround.ts";

/** One check as a row of the list: what it is, what its failure would mean, what was found. */
export function StopRow({ stop, href, grades }: { stop: Stop; href: string; grades: string[] }) {
  const reasons = useCatalogue()?.reasons ?? [];
  const { finding, grade } = stop;
  return (
    <a class={stop.open ? "stop stop-open" : "stop"} href={href}>
      <span class="stop-title">{stop.check.title}</span>
      <span class="stop-hazard">
        <Hazard word={stop.check.hazard} small outlined={grade === undefined || grade > 1} />
      </span>
      <span class="stop-state">
        {grade !== undefined && <Notches grade={grade} word={grades[grade] ?? ""} />}
        {grade !== undefined && finding.grade === undefined && <span class="quiet"> {words.byMeasure}</span>}
        {grade === undefined && finding.skipped !== undefined && (
          <span>{reasons.find((r) => r.id === finding.skipped)?.title ?? finding.skipped}</span>
        )}
        {stop.open && <span class="quiet">{words.open}</span>}
        {stop.judged?.held && (
          <span class="mark mark-open stop-held" title={words.heldLong}>
            {words.held}
          </span>
        )}
      </span>
    </a>
  );
}
