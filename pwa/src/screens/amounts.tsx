import type { ComponentChildren } from "preact";
import type { Range } from "../generated/types.ts";
import { showMoney } from "../parts/money.ts";
import { useIsDerived, Why } from "../parts/why.tsx";

/** A computed amount in whole currency units: its cents would claim what no estimate knows. */
export const rounded = (cents: number, currency: string): string =>
  showMoney(Math.round(cents / 100) * 100, currency);

/** A two-column list of names and amounts; the names wrap, the figures never do. */
export function Amounts({ children }: { children: ComponentChildren }) {
  return <dl class="amounts">{children}</dl>;
}

export function Amount(props: {
  name: ComponentChildren;
  note?: ComponentChildren;
  value: ComponentChildren;
  strong?: boolean;
  /** The figure's id, where the judgement tells how it came about. */
  why?: string;
}) {
  const derived = useIsDerived(props.why);
  return (
    <div class={props.strong ? "amount amount-strong" : "amount"}>
      <dt dir="auto">
        {props.name}
        {props.note && <span class="row-note">{props.note}</span>}
      </dt>
      <dd class="figures">{props.value}</dd>
      {derived && props.why !== undefined && (
        <dd class="amount-why">
          <Why of={props.why} short />
        </dd>
      )}
    </div>
  );
}

/** Low, likely and high of an amount; once where they are the same. */
function three(range: Range, show: (cents: number) => string): string {
  const low = show(range.low);
  const high = show(range.high);
  return low === high ? low : `${low} / ${show(range.likely)} / ${high}`;
}

/** Three amounts as they were entered. */
export const showRange = (range: Range, currency: string): string =>
  three(range, (m) => showMoney(m, currency));

/** Three computed amounts. */
export const roundedRange = (range: Range, currency: string): string =>
  three(range, (m) => rounded(m, currency));
