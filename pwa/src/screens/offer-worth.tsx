import "../style/worth.css";
import { WorthPlot } from "../charts/worth-plot.tsx";
import type { Result, Worth } from "../generated/types.ts";
import { Banner } from "../parts/page.tsx";
import type { ListingDoc } from "../parts/use-listing.ts";
import { worthWords as words } from "../words/worth.ts";
import { Amount, Amounts, rounded } from "./amounts.tsx";
import type { Lookup } from "./rubric-lookup.ts";
import { CostCard } from "./worth-cost.tsx";
import { SalesCard } from "./worth-sales.tsx";

/** What a sound one is worth: the sentence, the picture, and the two ways to it with all they rest on. */
export function WorthBlock(props: { result: Result; listing: ListingDoc; lookup: Lookup }) {
  const { result, listing, lookup } = props;
  const { worth, currency } = result;
  return (
    <section class="block" id="worth">
      <h2 class="block-title">{words.worth}</h2>
      {worth.known ? <Known worth={worth} currency={currency} /> : <p class="big-line">{worth.missing}</p>}
      <SalesCard worth={worth} currency={currency} listing={listing} kind={result.rubric.id} />
      {worth.widened && <Banner tone="note">{words.disagree}</Banner>}
      <CostCard approach={worth.cost} currency={currency} listing={listing} lookup={lookup} />
    </section>
  );
}

function Known({ worth, currency }: { worth: Worth; currency: string }) {
  const dots = worth.rows
    .filter((row) => row.used)
    .map((row) => ({ id: row.id, price: row.adjusted, weight: row.weight, apart: row.outlier === true }));
  const whole = { ...worth, title: words.together, whole: true };
  const ranges = [
    ...(worth.sales ? [{ ...worth.sales, title: words.sales, whole: false }] : []),
    ...(worth.cost ? [{ ...worth.cost, title: words.cost, whole: false }] : []),
    whole,
  ];
  const apart = dots.filter((dot) => dot.apart).length;
  const prices = dots.map((dot) => dot.price);
  const money = (cents: number) => rounded(cents, currency);
  const describe = [
    dots.length > 0
      ? words.plotDots(dots.length, money(Math.min(...prices)), money(Math.max(...prices)))
      : "",
    apart > 0 ? words.plotDotsApart(apart) : "",
    ...ranges.map((r) => words.plotRange(r.title, money(r.centre), money(r.low), money(r.high))),
  ];
  return (
    <>
      <p class="worth-says">{worth.sentence}</p>
      <WorthPlot
        dots={dots}
        ranges={ranges}
        title={words.plotTitle}
        describe={describe.filter(Boolean).join(" ")}
      />
      {dots.length > 0 && (
        <p class="hint">
          {words.plotKey} {apart > 0 && words.plotApart}
        </p>
      )}
      <Amounts>
        <Amount name={words.inPlace} value={rounded(worth.in_place, currency)} />
      </Amounts>
    </>
  );
}
