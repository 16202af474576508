import { percent, plain } from "../charts/format.ts";
import type { Hidden, Next, Result } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { Hazard } from "../parts/hazard.tsx";
import { resultScreenWords as words } from "../words/result.ts";
import { rounded } from "./amounts.tsx";

/** What the unseen is priced at, and why. */
export function HiddenDefects({ id, hidden, currency }: { id: string; hidden: Hidden; currency: string }) {
  const points = [...hidden.points].sort((a, b) => b.mean - a.mean);
  return (
    <section class="block">
      <h2 class="block-title">{words.hidden}</h2>
      <p>{hidden.sentence}</p>
      {points.length > 0 && (
        <Fold summary={words.hiddenPoints} aside={rounded(hidden.mean, currency)}>
          <p class="hint">{words.hiddenHigh(rounded(hidden.high, currency))}</p>
          <ul class="plain-list">
            {points.map((point) => (
              <li key={point.check}>
                <a class="row-link" href={`/listing/${id}/walk/${point.check}`}>
                  <span class="row-main" dir="auto">
                    {point.title}
                    <span class="row-note">{words.chance(percent(point.chance))}</span>
                  </span>
                  <span class="row-aside figures">{rounded(point.mean, currency)}</span>
                </a>
              </li>
            ))}
          </ul>
        </Fold>
      )}
      <Fold summary={words.care}>
        <table class="figures-table">
          <tbody>
            {words.careClasses.map((name, i) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>{percent((hidden.care[i] ?? 0) / 10_000)}</td>
                <td class="faint">{words.careBefore(percent((hidden.prior[i] ?? 0) / 10_000))}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Fold>
    </section>
  );
}

/** As many as fit in a quarter of an hour or so; the rest opens. */
const shown = 6;

/** What to look at before deciding: danger points first, then by what knowing is worth a minute. */
export function CheckNext({ id, result }: { id: string; result: Result }) {
  const { next, currency, progress } = result;
  const now = next.filter((n) => !n.held);
  const held = next.filter((n) => n.held);
  const rest = now.slice(shown);
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
      <NextList id={id} list={now.slice(0, shown)} currency={currency} />
      {rest.length > 0 && (
        <Fold summary={words.nextMore(rest.length, rest.filter((n) => n.must).length)}>
          <NextList id={id} list={rest} currency={currency} />
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

function NextList({ id, list, currency }: { id: string; list: Next[]; currency: string }) {
  return (
    <ol class="plain-list">
      {list.map((n) => (
        <li key={n.check}>
          <a class="row-link" href={`/listing/${id}/walk/${n.check}`}>
            <span class="row-main" dir="auto">
              {n.must && (
                <span class="must">
                  <Hazard word={n.hazard} small /> <b>{words.must}</b>{" "}
                </span>
              )}
              {n.title}
              <Gain gain={n.gain} must={n.must} currency={currency} />
            </span>
            <span class="row-aside figures">{words.minutes(plain(n.minutes))}</span>
          </a>
        </li>
      ))}
    </ol>
  );
}

/** What knowing the answer is worth; of a danger point only where it is worth anything, as it is looked at anyway. */
function Gain({ gain, must, currency }: { gain: number; must: boolean; currency: string }) {
  if (gain > 0) return <span class="row-note">{words.gain(rounded(gain, currency))}</span>;
  return must ? null : <span class="row-note">{words.noGain}</span>;
}
