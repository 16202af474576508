import type { ComponentChildren } from "preact";
import type { LimitResult } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { Hazard } from "../parts/hazard.tsx";
import { shopWords } from "../words/shop.ts";
import { LimitFigures } from "./limit-panel.tsx";

/** A finding as a word in a frame of its own kind: never by colour alone. */
export function FindingMark({ finding, words }: { finding: string; words: Record<string, string> }) {
  return <span class={`fit-mark fit-${finding}`}>{words[finding] ?? finding}</span>;
}

/** What must be known before anything else on the screen. */
export function Cautions({ title, lines }: { title: string; lines: string[] }) {
  if (lines.length === 0) return null;
  return (
    <section class="caution-card" aria-label={title}>
      <Hazard word="warning" />
      <ul class="ruled">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}

/** Where a field of the engine's list is entered. */
const placeOf = (field: string, listing: string) =>
  field.startsWith("listing.") ? `/listing/${listing}` : "/shop";

/** What would settle a point, each leading to where it is entered. */
function Missing(props: { title: string; fields: string[]; listing: string }) {
  if (props.fields.length === 0) return null;
  return (
    <div>
      <h3 class="small-head">{props.title}</h3>
      <ul class="plain-list">
        {props.fields.map((field) => (
          <li key={field}>
            <a class="row-link" href={placeOf(field, props.listing)}>
              <span class="row-main">{shopWords.missing(field)}</span>
            </a>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** One point with its finding, opening onto why, the figure and its source. */
export function PointFold(props: {
  point: { title: string; finding: string; text: string; limit?: LimitResult; missing?: string[] };
  findings: Record<string, string>;
  missing: string;
  figure: string;
  listing: string;
  children?: ComponentChildren;
}) {
  const { point } = props;
  return (
    <Fold
      summary={point.title}
      aside={<FindingMark finding={point.finding} words={props.findings} />}
      open={point.finding === "does-not"}
    >
      <p>{point.text}</p>
      <Missing title={props.missing} fields={point.missing ?? []} listing={props.listing} />
      {props.children}
      {point.limit && (
        <div>
          <h3 class="small-head">{props.figure}</h3>
          <LimitFigures result={point.limit} />
        </div>
      )}
    </Fold>
  );
}
