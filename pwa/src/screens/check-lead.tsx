import type { Rubric } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { Hazard } from "../parts/hazard.tsx";
import { Banner } from "../parts/page.tsx";
import type { Stop } from "../parts/use-walk.ts";
import { stateWords, checkWords as words } from "../words/walkaround.ts";

/** Above the title: the state the equipment must be in, and where on the walk this is. */
export function Lead({ stop, place }: { stop: Stop; place: string }) {
  return (
    <div class="check-lead">
      <p class="check-state">{stateWords[stop.section.state] ?? stop.section.state}</p>
      <p class="quiet figures">
        {stop.section.title} · {place}
      </p>
    </div>
  );
}

/** Why the check is not to be tried now, and what may be entered all the same. */
export function HeldBlock({ held }: { held: string }) {
  return (
    <section class="held-block" aria-label={words.heldTitle}>
      <Hazard word="danger" />
      <p>
        <b>{held}</b>
      </p>
      <p>{words.heldDo}</p>
    </section>
  );
}

/** The questions about the equipment that would tell whether the check applies, while they are not answered. */
export function OnlyIf({ rubric, stop, facts, id }: OnlyIfProps) {
  const open = Object.entries(stop.check.when ?? {}).flatMap(([fact, options]) => {
    const asked = facts[fact] === undefined && rubric.facts?.find((f) => f.id === fact);
    if (!asked) return [];
    const titles = asked.options.filter((o) => options.includes(o.id)).map((o) => o.title);
    return [words.onlyIf(asked.ask, titles)];
  });
  if (open.length === 0) return null;
  return (
    <Banner tone="note">
      {open.map((text) => (
        <p key={text}>{text}</p>
      ))}
      <a class="button" href={`/listing/${id}`}>
        {words.tellIt}
      </a>
    </Banner>
  );
}

interface OnlyIfProps {
  rubric: Rubric;
  stop: Stop;
  facts: Record<string, string>;
  id: string;
}

/** Said at once when a danger point is graded as failed. */
export function DangerFailed({ id }: { id: string }) {
  return (
    <Banner tone="danger" urgent>
      <Hazard word="danger" />
      <p>{words.dangerFailed}</p>
      <a class="button" href={`/listing/${id}/result`}>
        {words.toVerdict}
      </a>
    </Banner>
  );
}

/** The states in which the equipment moves; their caution is always in sight. */
const moving = ["unloaded", "loaded"];

/** What its failure would mean, the caution, and how the check is done. */
export function Instructions({ stop, first }: { stop: Stop; first: boolean }) {
  const { check, section } = stop;
  return (
    <div class="block check-how">
      <p class="check-marks">
        <Hazard word={check.hazard} />
        <span class="quiet figures">
          {words.kinds[check.kind] ?? check.kind} · {words.minutes(check.minutes)}
        </span>
      </p>
      {check.caution && <p class="check-caution">{check.caution}</p>}
      {section.caution && (
        <Fold summary={words.sectionCaution} open={first || moving.includes(section.state)}>
          <p>{section.caution}</p>
        </Fold>
      )}
      <p class="check-text">{check.how}</p>
      {check.instrument && check.instrument.length > 0 && (
        <p>{words.instrument(check.instrument.join(", "))}</p>
      )}
    </div>
  );
}
