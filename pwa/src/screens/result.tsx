import "../style/money.css";
import "../style/charts.css";
import type { Offer } from "../generated/types.ts";
import { Banner } from "../parts/page.tsx";
import { useListing } from "../parts/use-listing.ts";
import { resultScreenWords as words } from "../words/result.ts";
import { JudgedPage } from "./judged-page.tsx";
import { PriceList } from "./price-list.tsx";
import { Scores } from "./result-scores.tsx";
import { CheckNext, HiddenDefects } from "./result-unchecked.tsx";
import { VerdictStamp } from "./result-verdict.tsx";
import { useLookup } from "./rubric-lookup.ts";

/** The judgement of one listing: verdict, prices, scores, the unseen, what to do next. */
export function ResultScreen({ id }: { id: string }) {
  const lookup = useLookup(useListing(id)?.rubric?.id ?? "");
  const base = `/listing/${id}`;
  const actions = (
    <>
      <a class="button" href={`${base}/estimate`}>
        {words.toEstimate}
      </a>
      <a class="button button-main" href={`${base}/offer`}>
        {words.toOffer}
      </a>
    </>
  );
  return (
    <JudgedPage id={id} title={words.title} back={base} backTitle={words.backTitle} actions={actions}>
      {(result) => (
        <>
          <VerdictStamp id={id} verdict={result.verdict} lookup={lookup} />
          <Prices id={id} offer={result.offer} currency={result.currency} />
          <Scores id={id} result={result} lookup={lookup} />
          <HiddenDefects id={id} hidden={result.hidden} currency={result.currency} />
          <CheckNext id={id} result={result} />
          <Notes notes={result.notes} />
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
        <PriceList offer={offer} currency={currency} />
      ) : (
        <>
          <p>{offer.missing}</p>
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
