import "../style/money.css";
import "../style/charts.css";
import type { Result } from "../generated/types.ts";
import { showMoney } from "../parts/money.ts";
import { type ListingDoc, useListing } from "../parts/use-listing.ts";
import { Why } from "../parts/why.tsx";
import { estimateWords } from "../words/estimate.ts";
import { offerWords as words } from "../words/offer.ts";
import { JudgedPage } from "./judged-page.tsx";
import { OfferCurve } from "./offer-curve.tsx";
import { AskingPrice, useTriedPrice, WhatIf } from "./offer-price.tsx";
import { OfferSwings } from "./offer-swings.tsx";
import { OfferWaterfall } from "./offer-waterfall.tsx";
import { WorthBlock } from "./offer-worth.tsx";
import { OfferSays, PriceList } from "./price-list.tsx";
import { type Lookup, useLookup } from "./rubric-lookup.ts";

/** What to pay and why: three prices, a price to try, the odds, the way from worth to offer. */
export function OfferScreen({ id }: { id: string }) {
  const lookup = useLookup(useListing(id)?.values.get("rubric"));
  const actions = (
    <a class="button" href={`/listing/${id}/estimate`}>
      {estimateWords.title}
    </a>
  );
  return (
    <JudgedPage
      id={id}
      title={words.title}
      back={`/listing/${id}/result`}
      backTitle={words.backTitle}
      actions={actions}
      verdict
    >
      {(result, listing) =>
        result.offer.known ? (
          <KnownOffer result={result} listing={listing} lookup={lookup} />
        ) : (
          <>
            <WorthBlock result={result} listing={listing} lookup={lookup} />
            <AskingPrice listing={listing} currency={result.currency} />
          </>
        )
      }
    </JudgedPage>
  );
}

function KnownOffer({ result, listing, lookup }: { result: Result; listing: ListingDoc; lookup: Lookup }) {
  const price = useTriedPrice();
  return (
    <>
      <OfferSays sentences={result.offer.sentences} />
      <PriceList offer={result.offer} currency={result.currency} says={(p) => words.says[p.id]} />
      <Exactness result={result} />
      <AskingPrice listing={listing} currency={result.currency} />
      <WhatIf id={listing.id} result={result} asking={listing.number("asking")} {...price} />
      <OfferCurve result={result} />
      <OfferSwings result={result} />
      <OfferWaterfall result={result} />
      <WorthBlock result={result} listing={listing} lookup={lookup} />
    </>
  );
}

/** How exact the three prices are: what they are rounded to, and what the drawing may have moved. */
function Exactness({ result }: { result: Result }) {
  const { offer, currency } = result;
  return (
    <div>
      <p class="hint">{words.exactness(showMoney(offer.step, currency), showMoney(offer.error, currency))}</p>
      <Why of="error" />
    </div>
  );
}
