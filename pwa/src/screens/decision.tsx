import "../style/money.css";
import "../style/charts.css";
import "../style/compare.css";
import { useState } from "preact/hooks";
import { day, moment, plain } from "../charts/format.ts";
import { type DaySide, type Decision, decisions, type Plain, plainly, withdraw } from "../data/decision.ts";
import { Hazard } from "../parts/hazard.tsx";
import { showMoney } from "../parts/money.ts";
import { Banner, Page } from "../parts/page.tsx";
import { useWatch } from "../parts/use-watch.ts";
import { compareWords } from "../words/compare.ts";
import { decisionWords as words } from "../words/decision.ts";
import { pageWords } from "../words/parts.ts";
import { Bars } from "./compare-bars.tsx";
import type { Shown } from "./compare-side.ts";
import { Ahead } from "./compare-spread.tsx";
import { SideTable } from "./compare-table.tsx";
import { headOf } from "./decisions.tsx";

/** One decision with the figures of its day. */
export function DecisionScreen({ id }: { id: string }) {
  const { value, problem } = useWatch("decisions", decisions);
  const decision = value?.decisions.find((d) => d.id === id);
  const actions = decision && (
    <button type="button" class="button" onClick={() => print()}>
      {words.print}
    </button>
  );
  return (
    <Page
      title={decision ? headOf(decision) : words.title}
      back="/decisions"
      backTitle={words.toList}
      actions={actions}
    >
      {problem && (
        <Banner tone="problem" urgent>
          {problem}
        </Banner>
      )}
      {!value && !problem && <p role="status">{pageWords.loading}</p>}
      {value && !decision && <p>{words.missing}</p>}
      {decision && <Record decision={decision} />}
    </Page>
  );
}

function Record({ decision: d }: { decision: Decision }) {
  const sides: Shown[] = d.sides.map((side) => ({ id: side.id, letter: side.letter, side }));
  const chosen = d.sides.find((s) => s.id === d.chosen);
  return (
    <div class="compare decision">
      {d.withdrawn !== undefined && (
        <Banner tone="note">{words.withdrawn(day(d.withdrawn.slice(0, 10)))}</Banner>
      )}
      <section class="block" aria-label={words.title}>
        {chosen && (
          <p class="card-verdict">
            <Hazard word={chosen.verdict.hazard} /> <b>{chosen.verdict.title}</b>
          </p>
        )}
        {chosen && (
          <p dir="auto">
            <span class="letter">{chosen.letter}</span> {chosen.title}
          </p>
        )}
        <p>{words.on(day(d.date))}</p>
        <p class="decision-because" dir="auto">
          {words.because(d.reason)}
        </p>
        {chosen && d.price !== null && <Plainly side={chosen} price={d.price} currency={d.currency} />}
        {d.acknowledged !== "" && (
          <>
            <h2 class="small-head">{words.ownWords}</h2>
            <p class="decision-because" dir="auto">
              {d.acknowledged}
            </p>
          </>
        )}
      </section>
      <section class="block">
        <h2 class="block-title">{words.said}</h2>
        {d.sentences.map((sentence) => (
          <p key={sentence} dir="auto">
            {sentence}
          </p>
        ))}
      </section>
      <h2 class="block-title">{words.asItWas}</h2>
      <Bars sides={sides} currency={d.currency} />
      <Ahead sides={sides} currency={d.currency} />
      <SideTable
        sides={sides}
        currency={d.currency}
        priceOf={({ id, side }) => (
          <Price side={side} of={d.sides.find((s) => s.id === id)} currency={d.currency} />
        )}
      />
      <section class="block">
        <h2 class="block-title">{words.madeWith}</h2>
        <ul class="always">
          <li>{words.made(moment(d.made))}</li>
          <li>{words.program(d.program === "" ? words.development : d.program)}</li>
          {d.sides.map((s) => (
            <li key={s.id}>{words.rubric(s.letter, s.rubric.id, plain(s.rubric.version))}</li>
          ))}
        </ul>
        {d.criteria.length > 0 && (
          <p class="hint">
            {words.weights}: {d.criteria.map((c) => words.weight(c.title, plain(c.weight))).join(", ")}
          </p>
        )}
      </section>
      {d.withdrawn === undefined && <Withdraw id={d.id} />}
    </div>
  );
}

function Price(props: { side: Shown["side"]; of: DaySide | undefined; currency: string }) {
  const { side, of, currency } = props;
  const asked = of?.asked ?? null;
  return (
    <>
      {side.price === null ? compareWords.notTold : showMoney(side.price, currency)}
      {asked !== null && asked !== side.price && (
        <span class="row-note">{compareWords.asked(showMoney(asked, currency))}</span>
      )}
    </>
  );
}

/** What must not be left unsaid of a purchase. */
function Plainly({ side, price, currency }: { side: DaySide; price: number; currency: string }) {
  const list = plainly(side, price);
  if (list.length === 0) return null;
  const said = (what: Plain): string => {
    if (what === "unproven") return words.unproven(side.open);
    if (what === "above" && side.walk_away)
      return words.above(showMoney(price, currency), showMoney(side.walk_away.price, currency));
    return words.plain[what];
  };
  return (
    <div class="decide-plainly">
      <h2 class="small-head">{words.plainly}</h2>
      <ul class="always">
        {list.map((what) => (
          <li key={what}>{said(what)}</li>
        ))}
      </ul>
    </div>
  );
}

function Withdraw({ id }: { id: string }) {
  const [asking, setAsking] = useState(false);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const go = () =>
    withdraw(words.withdrawLabel, id).catch((cause: unknown) =>
      setProblem(cause instanceof Error ? cause.message : String(cause)),
    );
  return (
    <section class="block decision-withdraw" aria-label={words.withdraw}>
      {problem && (
        <p class="field-problem" role="alert">
          {problem}
        </p>
      )}
      {!asking && (
        <button type="button" class="button button-away" onClick={() => setAsking(true)}>
          {words.withdraw}
        </button>
      )}
      {asking && (
        <>
          <p>{words.withdrawWhy}</p>
          <div class="button-row">
            <button type="button" class="button button-away" onClick={() => void go()}>
              {words.withdrawYes}
            </button>
            <button type="button" class="button" onClick={() => setAsking(false)}>
              {words.withdrawNo}
            </button>
          </div>
        </>
      )}
    </section>
  );
}
