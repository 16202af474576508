import { useState } from "preact/hooks";
import { plain } from "../charts/format.ts";
import type { Plan, Result } from "../generated/types.ts";
import { Hazard } from "../parts/hazard.tsx";
import { Stepper } from "../parts/stepper.tsx";
import { resultScreenWords as words } from "../words/result.ts";

/** Where the two buttons stop, minutes. */
const marks = [5, 10, 15, 20, 30, 45, 60];
const usual = 15;
/** A working day: who has longer than that has no need of a short list. */
const most = 480;

/** Minutes told for a listing; forgotten with the page, as they are of this visit only. */
const told = new Map<string, number>();

export interface MinutesLeft {
  minutes: number;
  tell: (minutes: number) => void;
}

/** How many minutes the user has left at this listing. */
export function useMinutesLeft(id: string): MinutesLeft {
  const [minutes, setMinutes] = useState(told.get(id) ?? usual);
  return {
    minutes,
    tell: (n) => {
      told.set(id, n);
      setMinutes(n);
    },
  };
}

/** The minutes left, and what to do in them. */
export function PlanBlock({ id, result, left }: { id: string; result: Result; left: MinutesLeft }) {
  const plan = result.plan?.minutes === left.minutes ? result.plan : undefined;
  return (
    <div class="plan">
      <Stepper
        id={`minutes/${id}`}
        label={words.minutesLeft}
        value={left.minutes}
        marks={marks}
        low={1}
        high={most}
        keep={(n) => {
          left.tell(n);
          return undefined;
        }}
      />
      <div aria-live="polite">
        {plan ? (
          <PlanList id={id} plan={plan} />
        ) : (
          <p class="hint">{result.offer.known ? words.planWorking : words.planNoWorth}</p>
        )}
      </div>
    </div>
  );
}

/** The short list in walking order, each point leading to its check. */
function PlanList({ id, plan }: { id: string; plan: Plan }) {
  return (
    <>
      <p class="plan-says">{plan.sentence}</p>
      {plan.points.length > 0 && (
        <ol class="plain-list plan-list" aria-label={words.planList}>
          {plan.points.map((point) => (
            <li key={point.check}>
              <a class="row-link" href={`/listing/${id}/walk/${point.check}`}>
                <span class="row-main" dir="auto">
                  {point.must && <Must hazard={point.hazard} />}
                  {point.title}
                </span>
                <span class="row-aside figures">{words.minutes(plain(point.minutes))}</span>
              </a>
            </li>
          ))}
        </ol>
      )}
    </>
  );
}

/** The mark of a point that is looked at whatever it is worth. */
export function Must({ hazard }: { hazard: string }) {
  return (
    <span class="must">
      <Hazard word={hazard} small /> <b>{words.must}</b>{" "}
    </span>
  );
}
