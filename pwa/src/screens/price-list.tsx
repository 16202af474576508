import { inHundred } from "../charts/format.ts";
import { MarkKey, type MarkShape } from "../charts/mark.tsx";
import type { Offer, PricePoint } from "../generated/types.ts";
import { showMoney } from "../parts/money.ts";
import { Why } from "../parts/why.tsx";
import { resultScreenWords as words } from "../words/result.ts";

export interface NamedPrice {
  id: "opening" | "fair" | "walk_away";
  title: string;
  shape: MarkShape;
  point: PricePoint;
}

/** The three prices of an offer in the order they are used. */
export const threePrices = (offer: Offer): NamedPrice[] => [
  { id: "opening", title: words.opening, shape: "disc", point: offer.opening },
  { id: "fair", title: words.fair, shape: "square", point: offer.fair },
  { id: "walk_away", title: words.walkAway, shape: "triangle", point: offer.walk_away },
];

/** What the offer comes to, in the engine's sentences. */
export function OfferSays({ sentences }: { sentences: readonly string[] }) {
  return (
    <div class="offer-says">
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  );
}

/** The three prices as stamped figures, each with its odds. `says` adds a sentence under each. */
export function PriceList(props: { offer: Offer; currency: string; says?: (price: NamedPrice) => string }) {
  const prices = threePrices(props.offer);
  if (prices.every((p) => p.point.none)) {
    return (
      <div class="price-list price price-none">
        <span class="price-title">{words.noneOfThree}</span>
        <span class="price-figure figures">{words.noPrice}</span>
        <span class="price-odds">{words.notAsGift}</span>
        <Why of="fair" short />
      </div>
    );
  }
  return (
    <ul class="price-list">
      {prices.map((price) => (
        <li key={price.id} class={price.point.none ? "price price-none" : "price"}>
          <span class="price-title">
            <MarkKey shape={price.shape} /> {price.title}
          </span>
          <span class="price-figure figures">
            {price.point.none ? words.noPrice : showMoney(price.point.price, props.currency)}
          </span>
          <span class="price-odds">
            {price.point.none ? words.notAsGift : words.odds(inHundred(price.point.odds))}
          </span>
          <Why of={price.id} short />
          {props.says && !price.point.none && <span class="price-says">{props.says(price)}</span>}
        </li>
      ))}
    </ul>
  );
}
