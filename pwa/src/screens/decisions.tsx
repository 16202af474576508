import "../style/money.css";
import "../style/charts.css";
import "../style/compare.css";
import { day } from "../charts/format.ts";
import { type Decision, decisions } from "../data/decision.ts";
import { showMoney } from "../parts/money.ts";
import { Banner, Page } from "../parts/page.tsx";
import { useWatch } from "../parts/use-watch.ts";
import { compareWords } from "../words/compare.ts";
import { decisionWords as words } from "../words/decision.ts";
import { pageWords } from "../words/parts.ts";

/** Every decision written down, newest first. */
export function DecisionsScreen() {
  const { value, problem } = useWatch("decisions", decisions);
  return (
    <Page title={words.list} back="/" backTitle={pageWords.toListings}>
      {problem && (
        <Banner tone="problem" urgent>
          {problem}
        </Banner>
      )}
      {!value && !problem && <p role="status">{pageWords.loading}</p>}
      {value && value.unread > 0 && <Banner tone="note">{words.unread(value.unread)}</Banner>}
      {value && value.decisions.length === 0 && (
        <>
          <p>{words.none}</p>
          <p>{words.noneHow}</p>
          <a class="button" href="/compare">
            {compareWords.title}
          </a>
        </>
      )}
      {value && value.decisions.length > 0 && (
        <ul class="plain-list">
          {value.decisions.map((d) => (
            <li key={d.id}>
              <a class="row-link" href={`/decisions/${d.id}`}>
                <span class="row-main" dir="auto">
                  <span class={d.withdrawn === undefined ? "" : "off"}>{headOf(d)}</span>
                  <span class="row-note">{d.sides.find((s) => s.id === d.chosen)?.title ?? d.reason}</span>
                </span>
                <span class="row-aside">
                  {day(d.date)}
                  {d.withdrawn !== undefined && <span class="row-note">{words.withdrawnShort}</span>}
                </span>
              </a>
            </li>
          ))}
        </ul>
      )}
    </Page>
  );
}

/** The decision in a line. */
export function headOf(d: Decision): string {
  const side = d.sides.find((s) => s.id === d.chosen);
  if (!side || d.price === null) return words.headNone;
  return words.headBought(side.letter, showMoney(d.price, d.currency));
}
