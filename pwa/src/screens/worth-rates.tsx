import { useState } from "preact/hooks";
import { percent } from "../charts/format.ts";
import type { AdjustRate } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { save } from "../parts/save.ts";
import type { ListingDoc } from "../parts/use-listing.ts";
import { worthWords as words } from "../words/worth.ts";

/** Every kind of adjustment: what it does, where its rate comes from, and a switch. */
export function WorthRates({ rates, listing }: { rates: AdjustRate[]; listing: ListingDoc }) {
  const on = rates.filter((rate) => !rate.off).length;
  return (
    <Fold summary={words.rates} aside={words.ratesAside(on, rates.length)}>
      <p class="hint">{words.ratesHint}</p>
      {rates.map((rate) => (
        <RateSwitch key={rate.cause} rate={rate} listing={listing} />
      ))}
    </Fold>
  );
}

function RateSwitch({ rate, listing }: { rate: AdjustRate; listing: ListingDoc }) {
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const keep = (off: boolean) =>
    void save(words.setAdjust(rate.title), [
      { doc: listing.doc, path: `adjust/${rate.cause}`, value: off ? { off: true } : null },
    ]).then(setProblem);
  return (
    <label class="choice-item rate">
      <input type="checkbox" checked={!rate.off} onChange={(e) => keep(!e.currentTarget.checked)} />
      <span>
        <b>{rate.title}</b>
        {rate.says !== "" && <span class="rate-says">{rate.says}</span>}
        {(rate.used || rate.from_data > 0) && (
          <span class="row-note">
            {rate.from_data > 0 ? words.fromData(percent(rate.from_data)) : words.fromPrior}
          </span>
        )}
        {!rate.used && !rate.off && <span class="row-note">{words.notNeeded}</span>}
        {problem && (
          <span class="field-problem" role="alert">
            {problem}
          </span>
        )}
      </span>
    </label>
  );
}
