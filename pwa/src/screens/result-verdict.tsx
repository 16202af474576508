import type { Point, Verdict } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { Hazard } from "../parts/hazard.tsx";
import { Notches } from "../parts/notches.tsx";
import { Why } from "../parts/why.tsx";
import { resultScreenWords as words } from "../words/result.ts";
import type { Lookup } from "./rubric-lookup.ts";

/** The verdict as a stamp: the first thing read, and nothing averages it away. */
export function VerdictStamp(props: { id: string; verdict: Verdict; lookup: Lookup }) {
  const { verdict } = props;
  const first = inSight(verdict);
  return (
    <section class={`stamp stamp-${verdict.hazard}`} aria-label={words.verdict}>
      {verdict.code !== "no-stop-found" && <Hazard word={verdict.hazard} />}
      <p class="stamp-title">{verdict.title}</p>
      <p class="stamp-sentence">{verdict.sentence}</p>
      <Why of="verdict" />
      {verdict.points.length > 0 && <h2 class="small-head">{words.points}</h2>}
      <PointList {...props} points={verdict.points.slice(0, first)} />
      {verdict.points.length > first && (
        <Fold summary={more(verdict.points.slice(first))}>
          <PointList {...props} points={verdict.points.slice(first)} />
        </Fold>
      )}
      <h2 class="small-head">{words.always}</h2>
      <ul class="always">
        {verdict.always.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </section>
  );
}

/** What failed and can kill is always in sight; of the rest a long list opens, so that the prices are not far below. */
function inSight(verdict: Verdict): number {
  const failed = verdict.points.findLastIndex((p) => p.hazard === "danger" && p.grade === 0) + 1;
  return Math.max(failed, 6);
}

/** How many more there are, told by what they are. */
function more(points: readonly Point[]): string {
  const unchecked = points.filter((p) => p.grade === null).length;
  return words.morePoints(points.length - unchecked, unchecked);
}

function PointList(props: { id: string; points: Point[]; lookup: Lookup }) {
  return (
    <ul class="plain-list">
      {props.points.map((point) => (
        <li key={point.check}>
          <PointLink id={props.id} point={point} lookup={props.lookup} />
        </li>
      ))}
    </ul>
  );
}

function PointLink({ id, point, lookup }: { id: string; point: Point; lookup: Lookup }) {
  return (
    <a class="row-link" href={`/listing/${id}/walk/${point.check}`}>
      <Hazard word={point.hazard} small />
      <span class="row-main" dir="auto">
        {point.title}
      </span>
      <span class="row-aside">
        {point.grade === null ? (
          <span class="unchecked">{words.notChecked}</span>
        ) : (
          <Notches grade={point.grade} word={lookup.grade(point.grade)} />
        )}
      </span>
    </a>
  );
}
