import { change, percent } from "../charts/format.ts";
import type { ComparableRow } from "../generated/types.ts";
import { showMoney } from "../parts/money.ts";
import { worthWords as words } from "../words/worth.ts";
import { Amount, Amounts, rounded } from "./amounts.tsx";
import { OpenedFold } from "./opened-fold.tsx";

/** One comparable: from its price to what it says of this listing, and how much it counts. */
export function WorthComparable(props: {
  row: ComparableRow;
  /** Title of the one it repeats. */
  same: string | undefined;
  /** The largest weight of all, the length of a whole bar. */
  full: number;
  currency: string;
  kind: string;
}) {
  const { row, currency } = props;
  return (
    <OpenedFold
      summary={
        <span class="worth-row">
          <span dir="auto" class={row.used ? "" : "off"}>
            {row.title || words.untitled}
          </span>
          <span class="worth-row-line">
            {row.used ? (
              <>
                <span class="figures" aria-hidden="true">
                  {words.fromTo(showMoney(row.price, currency), rounded(row.adjusted, currency))}
                </span>
                <span class="seen-by-reader">
                  {words.fromToRead(showMoney(row.price, currency), rounded(row.adjusted, currency))}
                </span>
              </>
            ) : (
              <span class="figures">{showMoney(row.price, currency)}</span>
            )}
            {row.used && <WeightBar weight={row.weight} full={props.full} />}
          </span>
          <Marks row={row} same={props.same} />
        </span>
      }
    >
      {() => (
        <>
          <Amounts>
            <Amount name={words.asEntered} value={showMoney(row.price, currency)} />
            {row.adjustments.map((a) => (
              <Amount key={a.cause} name={a.title} value={change(a.factor)} />
            ))}
            {row.used && <Amount name={words.adjusted} value={rounded(row.adjusted, currency)} strong />}
          </Amounts>
          {row.used && row.adjustments.length === 0 && <p class="hint">{words.unadjusted}</p>}
          <a class="button" href={`/comparables?kind=${props.kind}&item=${row.id}`}>
            {words.change}
          </a>
        </>
      )}
    </OpenedFold>
  );
}

/** What is to be known of it before its figures are believed. */
function Marks({ row, same }: { row: ComparableRow; same: string | undefined }) {
  const marks = [
    // The engine's own words tell more.
    row.outlier && !row.note ? words.apart : "",
    row.same === undefined ? "" : same ? words.same(same) : words.sameUnknown,
    row.note ?? (row.used ? "" : words.leftOut),
  ].filter(Boolean);
  return (
    <>
      {marks.map((mark) => (
        <span key={mark} class="row-note" dir="auto">
          {mark}
        </span>
      ))}
    </>
  );
}

function WeightBar({ weight, full }: { weight: number; full: number }) {
  return (
    <span class="weight">
      <svg class="weight-bar" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
        <rect class="weight-part" width={full > 0 ? Math.max(1, (100 * weight) / full) : 0} height={10} />
      </svg>
      <span class="figures">
        <span class="seen-by-reader">{words.share}</span> {percent(weight)}
      </span>
    </span>
  );
}
