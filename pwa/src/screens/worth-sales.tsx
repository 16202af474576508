import { useState } from "preact/hooks";
import type { ComparableRow, Worth } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import type { ListingDoc } from "../parts/use-listing.ts";
import { worthWords as words } from "../words/worth.ts";
import { OpenedFold } from "./opened-fold.tsx";
import { ApproachCard, Steps } from "./worth-card.tsx";
import { WorthComparable } from "./worth-comparable.tsx";
import { WorthRates } from "./worth-rates.tsx";

/** How many are listed before the rest is asked for. */
const shown = 50;

/** Worth by what others brought: each comparable adjusted, and the rates that adjust them. */
export function SalesCard(props: { worth: Worth; currency: string; listing: ListingDoc; kind: string }) {
  const { worth, currency, listing, kind } = props;
  const { rows, sales } = worth;
  const used = rows.filter((row) => row.used).length;
  return (
    <ApproachCard
      title={words.sales}
      approach={sales}
      none={rows.length === 0 ? words.salesNone : words.salesNotUsed}
      currency={currency}
    >
      {sales && sales.steps.length > 0 && (
        <Fold summary={words.steps}>
          <Steps steps={sales.steps} />
        </Fold>
      )}
      {rows.length > 0 && (
        <OpenedFold summary={words.comparables} aside={words.used(used, rows.length)}>
          {() => <Rows rows={rows} currency={currency} kind={kind} />}
        </OpenedFold>
      )}
      {rows.length > 0 && worth.rates.length > 0 && <WorthRates rates={worth.rates} listing={listing} />}
      <a class="button approach-way" href={`/comparables?kind=${kind}`}>
        {words.toComparables}
      </a>
    </ApproachCard>
  );
}

/** Those that count first, the heaviest on top; a shop's list may hold thousands. */
function Rows({ rows, currency, kind }: { rows: ComparableRow[]; currency: string; kind: string }) {
  const [most, setMost] = useState(shown);
  const order = [...rows].sort((a, b) => Number(b.used) - Number(a.used) || b.weight - a.weight);
  const full = order[0]?.weight ?? 0;
  const titles = new Map(rows.map((row) => [row.id, row.title]));
  return (
    <>
      <div class="worth-rows">
        {order.slice(0, most).map((row) => (
          <WorthComparable
            key={row.id}
            row={row}
            same={row.same === undefined ? undefined : titles.get(row.same)}
            full={full}
            currency={currency}
            kind={kind}
          />
        ))}
      </div>
      {order.length > most && (
        <button type="button" class="button" onClick={() => setMost(most + shown)}>
          {words.more(Math.min(shown, order.length - most))}
        </button>
      )}
    </>
  );
}
