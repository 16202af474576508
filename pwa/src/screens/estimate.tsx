import "../style/money.css";
import "../style/charts.css";
import { hourSpan } from "../charts/format.ts";
import { RangeBar } from "../charts/range-bar.tsx";
import { type Answer, answersOf } from "../data/links.ts";
import type { Line, Result } from "../generated/types.ts";
import { useListing } from "../parts/use-listing.ts";
import { Why } from "../parts/why.tsx";
import { estimateWords as words } from "../words/estimate.ts";
import { handOverWords } from "../words/hand-over.ts";
import { Amount, Amounts, rounded, roundedRange } from "./amounts.tsx";
import { answersToLine } from "./answered.ts";
import { LandingLine } from "./estimate-landing.tsx";
import { Because, EstimateLine } from "./estimate-line.tsx";
import { JudgedPage } from "./judged-page.tsx";
import { type Lookup, useLookup } from "./rubric-lookup.ts";

/** What it takes to put it right and to get it standing, every line open to its parts and hours. */
export function EstimateScreen({ id }: { id: string }) {
  const lookup = useLookup(useListing(id)?.values.get("rubric"));
  const actions = (
    <>
      <a class="button" href="/prices">
        {words.toPrices}
      </a>
      <a class="button" href={`/listing/${id}/hand-over`}>
        {handOverWords.title}
      </a>
      <a class="button button-main" href={`/listing/${id}/offer`}>
        {words.toOffer}
      </a>
    </>
  );
  return (
    <JudgedPage
      id={id}
      title={words.title}
      back={`/listing/${id}/result`}
      backTitle={words.backTitle}
      actions={actions}
      verdict
    >
      {(result, listing) => (
        <>
          {scrapOf(result) ? <Scrap id={id} result={result} lookup={lookup} /> : <Totals result={result} />}
          <Lines
            id={id}
            result={result}
            kind="remedy"
            title={words.repairs}
            lookup={lookup}
            answers={answersOf(listing.values)}
          />
          <Lines
            id={id}
            result={result}
            kind="preparation"
            title={words.preparations}
            hint={words.preparationsHint}
            lookup={lookup}
          />
          <section class="block">
            <h2 class="block-title head-with-sum">
              {words.landing} <span class="figures">{rounded(result.landing.mean, result.currency)}</span>
            </h2>
            <p class="hint">{words.landingHint}</p>
            <Why of="landing" />
            <div>
              {result.landing.lines.map((line) => (
                <LandingLine
                  key={line.id}
                  listing={listing}
                  line={line}
                  currency={result.currency}
                  lookup={lookup}
                />
              ))}
            </div>
          </section>
        </>
      )}
    </JudgedPage>
  );
}

const scrapOf = (result: Result): Line | undefined => result.estimate.lines.find((l) => l.kind === "scrap");

/** The sum first: average, spread, hours, and the allowance for the unseen. */
function Totals({ result }: { result: Result }) {
  const { estimate, hidden, currency } = result;
  const money = (cents: number) => rounded(cents, currency);
  const [mean, low, high] = [money(estimate.mean), money(estimate.low), money(estimate.high)];
  if (estimate.lines.length === 0) {
    return (
      <section class="block">
        <p class="big-line">{words.totalNone}</p>
        <Amounts>
          <Amount name={words.hidden} note={hidden.sentence} value={money(hidden.mean)} why="hidden" />
        </Amounts>
      </section>
    );
  }
  return (
    <section class="block" aria-label={words.total}>
      <p class="big-line">
        <span class="big-figure figures">{mean}</span> <span>{words.span(low, high)}</span>
      </p>
      <RangeBar
        low={estimate.low}
        high={estimate.high}
        mean={estimate.mean}
        label={words.spanLabel(mean, low, high)}
      />
      <Why of="repair" />
      <Amounts>
        <Amount name={words.hours} value={words.hoursOf(hourSpan(estimate.hours.low, estimate.hours.high))} />
        <Amount name={words.hidden} note={hidden.sentence} value={money(hidden.mean)} why="hidden" />
      </Amounts>
      <p class="hint">{words.overrun}</p>
    </section>
  );
}

/** In place of the totals when a finding rules repair out: the loss is the whole. */
function Scrap({ id, result, lookup }: { id: string; result: Result; lookup: Lookup }) {
  const { currency, estimate, worth } = result;
  const line = scrapOf(result);
  if (!line) return null;
  return (
    <section class="block scrap">
      <h2 class="block-title">{words.scrap}</h2>
      <p>{words.scrapWhy}</p>
      <Because id={id} line={line} currency={currency} lookup={lookup} />
      <Amounts>
        <Amount name={words.scrapHaul} value={roundedRange(line.cost, currency)} />
        <Amount
          name={words.scrapLoss}
          note={
            worth.known
              ? words.span(rounded(estimate.low, currency), rounded(estimate.high, currency))
              : words.scrapUnknown
          }
          value={worth.known ? rounded(estimate.mean, currency) : "–"}
          why="repair"
          strong
        />
      </Amounts>
    </section>
  );
}

function Lines(props: {
  id: string;
  result: Result;
  kind: "remedy" | "preparation";
  title: string;
  hint?: string;
  lookup: Lookup;
  answers?: Answer[];
}) {
  const lines = props.result.estimate.lines.filter((l) => l.kind === props.kind);
  if (lines.length === 0) return null;
  return (
    <section class="block">
      <h2 class="block-title">{props.title}</h2>
      {props.hint && <p class="hint">{props.hint}</p>}
      <div>
        {lines.map((line) => (
          <EstimateLine
            key={line.id}
            id={props.id}
            line={line}
            currency={props.result.currency}
            lookup={props.lookup}
            answers={answersToLine(props.answers ?? [], line)}
          />
        ))}
      </div>
    </section>
  );
}
