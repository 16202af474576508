import type { VisitNeed, VisitPlan } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { Hazard } from "../parts/hazard.tsx";
import { visitWords as words } from "../words/visit.ts";

/** Instruments, clothing and what else to take along. */
export function VisitBring({ plan }: { plan: VisitPlan }) {
  return (
    <section class="block" aria-label={words.bring}>
      <h2 class="block-title">{words.bring}</h2>
      <Things title={words.wear} things={plan.wear} />
      <Things title={words.besides} things={plan.bring} />
      <h3 class="small-head">{words.instruments}</h3>
      {plan.instruments.length === 0 && <p>{words.noInstruments}</p>}
      <div>
        {plan.instruments.map((need) => (
          <Need key={need.id} need={need} aside={words.needs(need.checks.length, need.minutes)} />
        ))}
      </div>
    </section>
  );
}

function Things({ title, things }: { title: string; things: string[] }) {
  if (things.length === 0) return null;
  return (
    <div>
      <h3 class="small-head">{title}</h3>
      <ul class="bullets">
        {things.map((thing) => (
          <li key={thing}>{thing}</li>
        ))}
      </ul>
    </div>
  );
}

/** What stays open without power, without a load, without getting at it. */
export function VisitWithout({ plan }: { plan: VisitPlan }) {
  if (plan.without.length === 0) return null;
  return (
    <section class="block" aria-label={words.without}>
      <h2 class="block-title">{words.without}</h2>
      <p class="hint">{words.withoutHint}</p>
      <div>
        {plan.without.map((need) => (
          <Need
            key={need.id}
            need={need}
            aside={need.certain ? words.certain : words.share100(need.safety)}
            open={need.certain ?? false}
          />
        ))}
      </div>
    </section>
  );
}

function Need({ need, aside, open }: { need: VisitNeed; aside: string; open?: boolean }) {
  return (
    <Fold summary={need.title} aside={aside} open={open ?? false}>
      <p>{need.sentence}</p>
      <ul class="ruled">
        {need.checks.map((check) => (
          <li key={check.id} class="visit-check">
            {check.danger && <Hazard word="danger" small />}
            <span>{check.title}</span>
          </li>
        ))}
      </ul>
    </Fold>
  );
}
