import type { Approach } from "../generated/types.ts";
import type { ListingDoc } from "../parts/use-listing.ts";
import { worthWords as words } from "../words/worth.ts";
import { EffectiveAgeField } from "./listing-fields.tsx";
import { OpenedFold } from "./opened-fold.tsx";
import type { Lookup } from "./rubric-lookup.ts";
import { ApproachCard, Steps } from "./worth-card.tsx";
import { LostFold } from "./worth-lost.tsx";
import { NewPriceEntry } from "./worth-new-price.tsx";

/** Worth by the price of a new one less what age and more took, with all that can be told of it. */
export function CostCard(props: {
  approach: Approach | undefined;
  currency: string;
  listing: ListingDoc;
  lookup: Lookup;
}) {
  const { approach, currency, listing, lookup } = props;
  return (
    <ApproachCard title={words.cost} approach={approach} none={words.costNone} currency={currency}>
      {approach && <Steps steps={approach.steps} />}
      {/* Stays where it is when the first price makes an approach of it: somebody is typing here. */}
      <OpenedFold summary={words.costEntries} open={!approach}>
        {() => (
          <>
            <NewPriceEntry listing={listing} currency={currency} lookup={lookup} />
            <EffectiveAgeField listing={listing} />
            <LostFold listing={listing} />
          </>
        )}
      </OpenedFold>
    </ApproachCard>
  );
}
