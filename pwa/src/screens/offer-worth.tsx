import { factor, percent, plain } from "../charts/format.ts";
import { RangeBar } from "../charts/range-bar.tsx";
import { isRecord, quantityOf, rangeOf, textOf } from "../data/shape.ts";
import type { Approach, ComparableRow, NewPrice, Result, Worth } from "../generated/types.ts";
import { TextField } from "../parts/field.tsx";
import { Fold } from "../parts/fold.tsx";
import { showMoney } from "../parts/money.ts";
import { Banner } from "../parts/page.tsx";
import { RangeInput } from "../parts/range-input.tsx";
import { saveValue } from "../parts/save.ts";
import type { ListingDoc } from "../parts/use-listing.ts";
import { offerWords as words } from "../words/offer.ts";
import { Amount, Amounts, rounded } from "./amounts.tsx";
import { QuantityField, sizeUnits } from "./capacity-field.tsx";
import type { Lookup } from "./rubric-lookup.ts";

/** What a sound one is worth: both approaches, what they rest on, and the entry of a new price. */
export function WorthBlock({
  result,
  listing,
  lookup,
}: {
  result: Result;
  listing: ListingDoc;
  lookup: Lookup;
}) {
  const { worth, currency, rubric } = result;
  return (
    <section class="block" id="worth">
      <h2 class="block-title">{words.worth}</h2>
      {worth.known ? <Known worth={worth} currency={currency} /> : <p class="big-line">{worth.missing}</p>}
      <div>
        {worth.sales && <ApproachFold title={words.sales} approach={worth.sales} currency={currency} />}
        {worth.cost && <ApproachFold title={words.cost} approach={worth.cost} currency={currency} />}
        <Fold
          summary={words.comparables}
          aside={words.comparablesUsed(worth.rows.filter((r) => r.used).length, worth.rows.length)}
        >
          {worth.rows.length === 0 && <p>{words.comparablesNone}</p>}
          {worth.rows.map((row) => (
            <Row key={row.id} row={row} currency={currency} />
          ))}
        </Fold>
      </div>
      <a class="button" href={`/comparables?kind=${rubric.id}`}>
        {words.toComparables}
      </a>
      <NewPriceEntry listing={listing} currency={currency} lookup={lookup} />
    </section>
  );
}

function Known({ worth, currency }: { worth: Worth; currency: string }) {
  const [centre, low, high] = [worth.centre, worth.low, worth.high].map((m) => rounded(m, currency));
  return (
    <>
      <p class="big-line">
        <span class="big-figure figures">{centre}</span> <span>{words.worthSpan(low ?? "", high ?? "")}</span>
      </p>
      <RangeBar
        low={worth.low}
        high={worth.high}
        mean={worth.centre}
        label={words.worthLabel(centre ?? "", low ?? "", high ?? "")}
      />
      {worth.widened ? <Banner tone="note">{worth.sentence}</Banner> : null}
      <Amounts>
        <Amount name={words.inPlace} value={rounded(worth.in_place, currency)} />
      </Amounts>
    </>
  );
}

function ApproachFold({
  title,
  approach,
  currency,
}: {
  title: string;
  approach: Approach;
  currency: string;
}) {
  return (
    <Fold
      summary={
        <span>
          {title}
          <span class="row-note figures">{words.weight(percent(approach.weight))}</span>
        </span>
      }
      aside={rounded(approach.centre, currency)}
    >
      <ol class="steps">
        {approach.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
    </Fold>
  );
}

/** One comparable with the factors that bring it to this listing. */
function Row({ row, currency }: { row: ComparableRow; currency: string }) {
  return (
    <Fold
      summary={
        <span dir="auto" class={row.used ? "" : "off"}>
          {row.title}
          <span class="row-note">
            {row.used ? words.share(plain(row.weight)) : (row.note ?? words.leftOut)}
          </span>
        </span>
      }
      aside={row.used ? rounded(row.adjusted, currency) : words.leftOut}
    >
      <Amounts>
        <Amount name={words.asEntered} value={showMoney(row.price, currency)} />
        {row.adjustments.map((a) => (
          <Amount key={a.cause} name={a.cause} value={factor(a.factor)} />
        ))}
        {row.used && <Amount name={words.adjusted} value={rounded(row.adjusted, currency)} strong />}
      </Amounts>
      {row.note && row.used && <p class="hint">{row.note}</p>}
    </Fold>
  );
}

/** The price of a new equivalent with its size and source: one value, so they never part. */
function NewPriceEntry({
  listing,
  currency,
  lookup,
}: {
  listing: ListingDoc;
  currency: string;
  lookup: Lookup;
}) {
  const stored = listing.values.get("newprice");
  const price = isRecord(stored) ? rangeOf(stored.price) : undefined;
  const capacity = isRecord(stored) ? quantityOf(stored.capacity) : undefined;
  const seen = isRecord(stored) ? textOf(stored.seen) : undefined;
  const keep = (next: Partial<NewPrice> | null) =>
    saveValue(
      words.setNewPrice,
      listing.doc,
      "newprice",
      next === null || !next.price
        ? null
        : {
            price: { ...next.price },
            ...(next.capacity ? { capacity: { ...next.capacity } } : {}),
            ...(next.seen ? { seen: next.seen } : {}),
          },
    );
  const whole: Partial<NewPrice> = {
    ...(price ? { price } : {}),
    ...(capacity ? { capacity } : {}),
    ...(seen ? { seen } : {}),
  };
  const size = lookup.rubric?.capacity;
  return (
    <div class="block">
      <RangeInput
        id={`${listing.doc}/newprice`}
        label={words.newPrice}
        hint={words.newPriceHint}
        currency={currency}
        range={price}
        keep={(range) => keep(range === null ? null : { ...whole, price: range })}
      />
      {price && size && (
        <QuantityField
          id={`${listing.doc}/newprice-capacity`}
          label={words.newCapacity(size.title)}
          hint={words.newCapacityHint}
          units={sizeUnits(size)}
          value={capacity}
          most={1e9}
          keep={(quantity) => {
            const { capacity: _, ...rest } = whole;
            return keep(quantity ? { ...rest, capacity: quantity } : rest);
          }}
        />
      )}
      {price && (
        <TextField
          id={`${listing.doc}/newprice-seen`}
          label={words.newSeen}
          value={seen ?? ""}
          keep={(text) => keep({ ...whole, seen: text.trim() })}
        />
      )}
    </div>
  );
}
