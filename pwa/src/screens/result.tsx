import "../style/money.css";
import "../style/charts.css";
import type { Offer } from "../generated/types.ts";
import { Banner } from "../parts/page.tsx";
import { useListing } from "../parts/use-listing.ts";
import { handOverWords } from "../words/hand-over.ts";
import { resultScreenWords as words } from "../words/result.ts";
import { JudgedPage } from "./judged-page.tsx";
import { OfferSays, PriceList } from "./price-list.tsx";
import { HiddenDefects } from "./result-hidden.tsx";
import { CheckNext } from "./result-next.tsx";
import { useMinutesLeft } from "./result-plan.tsx";
import { Scores } from "./result-scores.tsx";
import { VerdictStamp } from "./result-verdict.tsx";
import { useLookup } from "./rubric-lookup.ts";

/** The judgement of one listing, what must be known first: verdict, prices, what to do next, scores, the unseen. */
export function ResultScreen({ id }: { id: string }) {
  const left = useMinutesLeft(id);
  const lookup = useLookup(useListing(id)?.values.get("rubric"));
  const base = `/listing/${id}`;
  const actions = (
    <>
      <a class="button" href={`${base}/estimate`}>
        {words.toEstimate}
      </a>
      <a class="button" href={`${base}/hand-over`}>
        {handOverWords.title}
      </a>
      <a class="button button-main" href={`${base}/offer`}>
        {words.toOffer}
      </a>
    </>
  );
  return (
    <JudgedPage
      id={id}
      title={words.title}
      back={base}
      backTitle={words.backTitle}
      actions={actions}
      minutes={left.minutes}
    >
      {(result, listing) => (
        <>
          <VerdictStamp id={id} verdict={result.verdict} lookup={lookup} />
          <Prices id={id} offer={result.offer} currency={result.currency} />
          <Notes notes={result.notes} />
          <CheckNext id={id} result={result} left={left} />
          <Scores id={id} result={result} lookup={lookup} />
          <HiddenDefects result={result} listing={listing} />
        </>
      )}
    </JudgedPage>
  );
}

function Prices({ id, offer, currency }: { id: string; offer: Offer; currency: string }) {
  return (
    <section class="block">
      <h2 class="block-title">{words.prices}</h2>
      {offer.known ? (
        <>
          <OfferSays sentences={offer.sentences} />
          <PriceList offer={offer} currency={currency} />
        </>
      ) : (
        <>
          <p class="big-line">{offer.missing}</p>
          <p>
            <a class="button" href={`/listing/${id}/offer#worth`}>
              {words.addWorth}
            </a>
          </p>
        </>
      )}
    </section>
  );
}

function Notes({ notes }: { notes: string[] }) {
  if (notes.length === 0) return null;
  return (
    <section class="block">
      <h2 class="block-title">{words.notes}</h2>
      {notes.map((note) => (
        <Banner key={note} tone="note">
          {note}
        </Banner>
      ))}
    </section>
  );
}
