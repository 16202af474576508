import { useEffect, useId, useRef, useState } from "preact/hooks";
import { inHundred } from "../charts/format.ts";
import { niceStep } from "../charts/scale.ts";
import type { Offer, Result } from "../generated/types.ts";
import { MoneyField } from "../parts/field.tsx";
import { showMoney } from "../parts/money.ts";
import { Banner } from "../parts/page.tsx";
import { saveValue } from "../parts/save.ts";
import type { ListingDoc } from "../parts/use-listing.ts";
import { useResult } from "../parts/use-result.ts";
import { Derived, Why } from "../parts/why.tsx";
import { offerWords as words } from "../words/offer.ts";
import { Amount, Amounts, rounded } from "./amounts.tsx";

/** The seller's price, kept with the listing. */
export function AskingPrice({ listing, currency }: { listing: ListingDoc; currency: string }) {
  return (
    <MoneyField
      id={`${listing.doc}/asking`}
      label={words.asking}
      hint={words.askingHint}
      cents={listing.number("asking")}
      currency={currency}
      keep={(cents) => saveValue(words.setAsking, listing.doc, "asking", cents)}
    />
  );
}

/** How long the slider rests before the engine is asked, ms. */
const rest = 150;

/** A price being tried: shown at once, asked of the engine once it rests. */
export function useTriedPrice(): {
  tried: number | undefined;
  asked: number | undefined;
  tryPrice: (cents?: number) => void;
} {
  const [tried, setTried] = useState<number | undefined>(undefined);
  const [asked, setAsked] = useState<number | undefined>(undefined);
  const timer = useRef(0);
  const tryPrice = (cents?: number) => {
    setTried(cents);
    clearTimeout(timer.current);
    timer.current = window.setTimeout(() => setAsked(cents), rest);
  };
  useEffect(() => () => clearTimeout(timer.current), []);
  return { tried, asked, tryPrice };
}

/** Slider and field for a price that is not kept, and what it comes to. */
export function WhatIf(props: {
  id: string;
  result: Result;
  asking: number | undefined;
  tried: number | undefined;
  asked: number | undefined;
  tryPrice: (cents?: number) => void;
}) {
  const { result, asking, tried, asked, tryPrice } = props;
  const dom = useId();
  const { currency, offer } = result;
  const top = Math.max(offer.curve.at(-1)?.price ?? 0, asking ?? 0, tried ?? 0, 100);
  const step = Math.max(100, niceStep(top, 200));
  const now = tried ?? asking ?? (offer.fair.none ? 0 : offer.fair.price);
  return (
    <section class="block">
      <h2 class="block-title">{words.whatIf}</h2>
      <MoneyField
        id={`try/${props.id}`}
        label={words.slider}
        hint={words.whatIfHint}
        cents={now}
        currency={currency}
        required
        keep={(cents) => {
          if (cents !== null) tryPrice(cents);
          return undefined;
        }}
      />
      <label class="seen-by-reader" for={dom}>
        {words.slider}
      </label>
      <input
        id={dom}
        class="price-slider"
        type="range"
        min={0}
        max={Math.ceil(top / step) * step}
        step={step}
        value={now}
        aria-valuetext={showMoney(now, currency)}
        onInput={(e) => tryPrice(Number(e.currentTarget.value))}
      />
      {tried !== undefined && asking !== undefined && tried !== asking && (
        <button type="button" class="button" onClick={() => tryPrice(undefined)}>
          {words.back}
        </button>
      )}
      {asked !== undefined ? (
        <TriedPrice id={props.id} price={asked} />
      ) : offer.at ? (
        <AtPrice offer={offer} currency={currency} />
      ) : (
        <p class="hint">{words.noPrice}</p>
      )}
    </section>
  );
}

/** The engine's answer at a tried price. */
function TriedPrice({ id, price }: { id: string; price: number }) {
  const { result, problem } = useResult(id, { price });
  if (problem) return <Banner tone="problem">{problem}</Banner>;
  if (!result) return <p class="hint">{words.working}</p>;
  return (
    <Derived why={result.why}>
      <AtPrice offer={result.offer} currency={result.currency} />
    </Derived>
  );
}

/** Odds, gain and all-in at one price. */
function AtPrice({ offer, currency }: { offer: Offer; currency: string }) {
  const { at, ahead, all_in: sum } = offer;
  if (!at) return null;
  const money = (cents: number) => rounded(cents, currency);
  return (
    <div class="at-price" aria-live="polite">
      <p class="at-odds">
        <span class="at-title">{words.atPrice(showMoney(at.price, currency))}</span>
        <span class="big-figure figures">{words.oddsAt(inHundred(at.odds))}</span>
        <span>{words.oddsName}</span>
      </p>
      <Why of="odds" />
      <Amounts>
        {ahead !== null && (
          <Amount
            name={ahead < 0 ? words.behind : words.ahead}
            value={money(Math.abs(ahead))}
            why="ahead"
            strong
          />
        )}
      </Amounts>
      {sum && (
        <>
          <h3 class="small-head">{words.allIn}</h3>
          <Amounts>
            <Amount name={words.price} value={showMoney(sum.price, currency)} />
            {sum.tax !== 0 && <Amount name={words.tax} value={money(sum.tax)} />}
            {sum.fees !== 0 && <Amount name={words.fees} value={money(sum.fees)} />}
            <Amount name={words.landing} value={money(sum.landing)} why="landing" />
            <Amount name={words.repair} value={money(sum.repair)} why="repair" />
            <Amount name={words.hidden} value={money(sum.hidden)} why="hidden" />
            <Amount name={words.total} value={money(sum.total)} why="all_in" strong />
          </Amounts>
          <p class="hint">{words.roundedNote}</p>
        </>
      )}
    </div>
  );
}
