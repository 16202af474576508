import { plain } from "../charts/format.ts";
import type { Next, Result } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { resultScreenWords as words } from "../words/result.ts";
import { rounded } from "./amounts.tsx";
import { type MinutesLeft, Must, PlanBlock } from "./result-plan.tsx";

/** As many as are taken in at a glance; the rest opens. */
const shown = 6;

/** What to look at before deciding: a plan of the minutes left, then all of it, danger points first. */
export function CheckNext({ id, result, left }: { id: string; result: Result; left: MinutesLeft }) {
  const { next, currency, progress } = result;
  const now = next.filter((n) => !n.held);
  const held = next.filter((n) => n.held);
  const rest = now.slice(shown);
  // Without a worth there is no price that knowing more could change.
  const priced = result.offer.known;
  return (
    <section class="block">
      <h2 class="block-title">{words.next}</h2>
      {next.length === 0 ? (
        <p>{progress.skipped === 0 ? words.nextNone : words.nextNoneOpen(progress.skipped)}</p>
      ) : (
        <p class="hint">
          {words.progress(
            progress.graded,
            progress.applies,
            progress.skipped,
            plain(Math.round(progress.minutes_left)),
          )}
        </p>
      )}
      {now.length > 0 && (
        <>
          <PlanBlock id={id} result={result} left={left} />
          <h3 class="small-head">{words.nextAll}</h3>
        </>
      )}
      <NextList id={id} list={now.slice(0, shown)} currency={currency} priced={priced} />
      {rest.length > 0 && (
        <Fold summary={words.nextMore(rest.length, rest.filter((n) => n.must).length)}>
          <NextList id={id} list={rest} currency={currency} priced={priced} />
        </Fold>
      )}
      {held.length > 0 && (
        <>
          <h3 class="small-head">{words.heldTitle}</h3>
          <HeldList id={id} list={held} />
        </>
      )}
    </section>
  );
}

/** Points that wait for others: the reason stands in place of what knowing them is worth. */
function HeldList({ id, list }: { id: string; list: Next[] }) {
  return (
    <ul class="plain-list">
      {list.map((n) => (
        <li key={n.check}>
          <a class="row-link" href={`/listing/${id}/walk/${n.check}`}>
            <span class="row-main" dir="auto">
              {n.title}
              <span class="row-note">{n.held}</span>
            </span>
          </a>
        </li>
      ))}
    </ul>
  );
}

function NextList(props: { id: string; list: Next[]; currency: string; priced: boolean }) {
  const { id, list, currency, priced } = props;
  return (
    <ol class="plain-list">
      {list.map((n) => (
        <li key={n.check}>
          <a class="row-link" href={`/listing/${id}/walk/${n.check}`}>
            <span class="row-main" dir="auto">
              {n.must && <Must hazard={n.hazard} />}
              {n.title}
              {priced && <Gain next={n} currency={currency} />}
            </span>
            <span class="row-aside figures">{words.minutes(plain(n.minutes))}</span>
          </a>
        </li>
      ))}
    </ol>
  );
}

/** What knowing the answer is worth; of a danger point only where it is worth anything, as it is looked at anyway. */
function Gain({ next, currency }: { next: Next; currency: string }) {
  const { gain, per_minute: perMinute, must } = next;
  if (gain > 0) {
    return <span class="row-note">{words.gain(rounded(gain, currency), rounded(perMinute, currency))}</span>;
  }
  return must ? null : <span class="row-note">{words.noGain}</span>;
}
