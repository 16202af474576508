import { useState } from "preact/hooks";
import type { ListingSummary } from "../data/read.ts";
import { showMoney } from "../parts/money.ts";
import { useShop } from "../parts/use-shop.ts";
import { compareWords as words } from "../words/compare.ts";
import { listingsWords } from "../words/listings.ts";
import { listingTitle } from "./listing-title.ts";

/** The listings to compare, each a large box to tick. */
export function ChooseListings(props: {
  listings: ListingSummary[];
  chosen: readonly string[];
  /** How many can stand side by side. */
  most: number;
  kindOf: (listing: ListingSummary) => string | undefined;
  choose: (ids: string[]) => void;
}) {
  const { chosen, choose } = props;
  const currency = useShop()?.currency ?? "USD";
  const [refused, setRefused] = useState<string | undefined>(undefined);
  const over = chosen.length > props.most ? words.tooManyAsked(props.most, chosen.length) : undefined;
  const problem = over ?? refused;
  return (
    <fieldset class={problem ? "field field-wrong choice" : "field choice"}>
      <legend class="field-label">{words.choose}</legend>
      <p class="field-hint">{words.chooseHint}</p>
      <div class="choice-list">
        {props.listings.map((listing) => {
          const kind = props.kindOf(listing);
          const asking =
            listing.asking === undefined
              ? listingsWords.noAsking
              : `${listingsWords.asking} ${showMoney(listing.asking, currency)}`;
          const ticked = chosen.includes(listing.id);
          return (
            <label key={listing.id} class="choice-item">
              <input
                type="checkbox"
                checked={ticked}
                onChange={(e) => {
                  const full = !ticked && chosen.length >= props.most;
                  setRefused(full ? words.tooMany(props.most, listingTitle(listing.title, kind)) : undefined);
                  if (full) e.currentTarget.checked = false;
                  else choose(ticked ? chosen.filter((id) => id !== listing.id) : [...chosen, listing.id]);
                }}
              />
              <span dir="auto">
                {listingTitle(listing.title, kind)}
                <span class="row-note">
                  {kind ?? listingsWords.noKind} · {asking}
                </span>
              </span>
            </label>
          );
        })}
      </div>
      {problem && (
        <p class="field-problem choice-problem" role="alert">
          {problem}
        </p>
      )}
    </fieldset>
  );
}
