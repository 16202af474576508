import type { ComponentChildren } from "preact";
import { percent } from "../charts/format.ts";
import type { Approach } from "../generated/types.ts";
import { worthWords as words } from "../words/worth.ts";
import { rounded } from "./amounts.tsx";

/** One way to worth: where it lies and how much it counts, then what it rests on. */
export function ApproachCard(props: {
  title: string;
  approach: Approach | undefined;
  /** Said in place of the figures while there are none. */
  none: string;
  currency: string;
  children: ComponentChildren;
}) {
  const { approach, currency } = props;
  return (
    <section class="approach" aria-label={props.title}>
      <h3>{props.title}</h3>
      {approach ? (
        <p>
          <span class="big-figure figures">{rounded(approach.centre, currency)}</span>{" "}
          <span>{words.span(rounded(approach.low, currency), rounded(approach.high, currency))}</span>
          <span class="row-note figures">{words.counts(percent(approach.weight))}</span>
        </p>
      ) : (
        <p>{props.none}</p>
      )}
      <div>{props.children}</div>
    </section>
  );
}

/** A derivation in sentences, in order. */
export function Steps({ steps }: { steps: readonly string[] }) {
  return (
    <ol class="steps">
      {steps.map((step) => (
        <li key={step}>{step}</li>
      ))}
    </ol>
  );
}
