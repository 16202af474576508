import { Fold } from "../parts/fold.tsx";
import { Hazard } from "../parts/hazard.tsx";
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
        <Fold summary={words.sectionCaution} open={first}>
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
