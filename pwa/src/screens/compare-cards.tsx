import { inHundred, percent, plain } from "../charts/format.ts";
import { type Filling, FillingKey, StackBar } from "../charts/stack-bar.tsx";
import type { AllIn, PricePoint } from "../generated/types.ts";
import { Hazard } from "../parts/hazard.tsx";
import { showMoney } from "../parts/money.ts";
import { compareWords as words } from "../words/compare.ts";
import { Amount, Amounts, rounded } from "./amounts.tsx";
import type { Lettered } from "./compare-side.ts";

/** One card a listing, best first; on a wide screen they stand side by side. */
export function Cards({ sides, currency }: { sides: readonly Lettered[]; currency: string }) {
  const most = Math.max(0, ...sides.map((s) => s.side.all_in?.total ?? 0));
  return (
    <section class="block">
      <h2 class="block-title">{words.cards}</h2>
      {most > 0 && <p class="hint">{words.cardsHint}</p>}
      <ol class="compare-cards">
        {sides.map((s, i) => (
          <li key={s.id}>
            <Card of={s} place={i + 1} currency={currency} most={most} />
          </li>
        ))}
      </ol>
    </section>
  );
}

function Card(props: { of: Lettered; place: number; currency: string; most: number }) {
  const { id, letter, side } = props.of;
  const { currency } = props;
  const barred = side.gate !== "";
  return (
    <article class={barred ? "compare-card compare-barred" : "compare-card"}>
      <p class="card-verdict">
        <Hazard word={side.verdict.hazard} /> <b>{side.verdict.title}</b>
      </p>
      <h3>
        <a class="card-title" href={`/listing/${id}/result`}>
          <span class="letter">{letter}</span>
          <span dir="auto">{side.title === "" ? words.untitled : side.title}</span>
        </a>
      </h3>
      <p class="hint">
        {barred ? words.last : words.place(props.place)}
        {side.score !== null && !barred && ` · ${words.score(plain(Math.round(side.score)))}`}
      </p>
      {side.missing && <p>{side.missing}</p>}
      {side.all_in && <Sum sum={side.all_in} most={props.most} currency={currency} />}
      <Amounts>
        {side.odds !== null && <Amount name={words.odds} value={words.oddsIn(inHundred(side.odds))} strong />}
        {!side.all_in && side.price !== null && (
          <Amount name={words.price} value={showMoney(side.price, currency)} />
        )}
        <Priced name={words.fair} point={side.fair} currency={currency} />
        <Priced name={words.walkAway} point={side.walk_away} currency={currency} />
        <Amount name={words.safety} value={percent(side.safety.coverage / 100)} />
        <Amount name={words.condition} value={percent(side.condition.coverage / 100)} />
        <Amount name={words.hours} value={words.hoursOf(plain(side.hours))} />
        <Amount name={words.hides} value={rounded(side.hides, currency)} />
        <Amount
          name={words.distance}
          value={side.distance ? `${plain(side.distance.n)} ${side.distance.unit}` : words.notTold}
        />
      </Amounts>
    </article>
  );
}

function Priced(props: { name: string; point: PricePoint | null; currency: string }) {
  const { point } = props;
  if (!point) return null;
  return (
    <Amount name={props.name} value={point.none ? words.noOffer : showMoney(point.price, props.currency)} />
  );
}

const fillings = {
  price: "solid",
  dues: "upright",
  landing: "slanted",
  repair: "dotted",
  hidden: "blank",
} as const satisfies Record<string, Filling>;

/** The all-in sum as one bar by cause, with its legend in words. */
function Sum({ sum, most, currency }: { sum: AllIn; most: number; currency: string }) {
  const { price, landing, repair, hidden } = sum;
  const parts = Object.entries({ price, dues: sum.tax + sum.fees, landing, repair, hidden }).map(
    ([id, amount]) => {
      const cause = id as keyof typeof fillings;
      return { id, amount, filling: fillings[cause], name: words.parts[cause] };
    },
  );
  const shown = parts.filter((p) => p.amount !== 0);
  const total = rounded(sum.total, currency);
  const said = shown.map((p) => words.partOf(p.name, rounded(p.amount, currency)));
  return (
    <div>
      <StackBar parts={parts} most={most} label={words.allInLabel(said, total)} />
      <Amounts>
        {shown.map((p) => (
          <Amount
            key={p.id}
            name={
              <span class="filling-name">
                <FillingKey filling={p.filling} /> {p.name}
              </span>
            }
            value={rounded(p.amount, currency)}
          />
        ))}
        <Amount name={words.allIn} value={total} strong />
      </Amounts>
    </div>
  );
}
