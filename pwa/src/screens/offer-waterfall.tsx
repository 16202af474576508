import { stripDomain, strips, WaterfallStrip } from "../charts/waterfall.tsx";
import type { Result } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { Why } from "../parts/why.tsx";
import { offerWords as words } from "../words/offer.ts";
import { Amount, Amounts, rounded } from "./amounts.tsx";

/** Steps that follow from a price. */
const priced = ["tax", "margin", "fair"];

/** The figure that a step shows, where it has a derivation. */
const figures: Record<string, string> = {
  worth: "in_place",
  repair: "repair",
  hidden: "hidden",
  landing: "landing",
  fair: "fair",
};

/** From worth to the fair offer, a row a cause; steps that take nothing are left out. */
export function OfferWaterfall({ result }: { result: Result }) {
  const { currency, offer } = result;
  const money = (cents: number) => rounded(cents, currency);
  // With no fair offer there is no price to tax and no margin to keep.
  const steps = offer.fair.none ? offer.waterfall.filter((s) => !priced.includes(s.cause)) : offer.waterfall;
  const domain = stripDomain(steps);
  const bars = strips(steps, !offer.fair.none);
  const rows = steps
    .map((step, i) => ({ step, strip: bars[i] }))
    .filter(({ step, strip }) => strip && (strip.total || step.amount !== 0));
  if (rows.length === 0) return null;
  return (
    <section class="block">
      <h2 class="block-title">{words.waterfall}</h2>
      {offer.fair.none && <p>{words.waterfallNone}</p>}
      <div class="waterfall">
        {rows.map(({ step, strip }) =>
          strip ? (
            <Fold
              key={step.cause}
              summary={
                <span class={strip.total ? "fall-head fall-head-total" : "fall-head"}>
                  <span class="fall-words">
                    <span>{step.title}</span>
                    <span class="figures fall-amount">
                      {strip.total ? money(step.total) : signed(step.amount, money)}
                    </span>
                  </span>
                  <WaterfallStrip
                    strip={strip}
                    domain={domain}
                    label={
                      strip.total
                        ? words.totalLabel(step.title, money(step.total))
                        : words.stepLabel(step.title, money(strip.from), money(strip.to))
                    }
                  />
                </span>
              }
            >
              <Why of={figures[step.cause] ?? ""} />
              {step.lines.length === 0 ? (
                <p class="hint">{words.noLines}</p>
              ) : (
                <Amounts>
                  {step.lines.map((line) => (
                    <Amount key={line.title} name={line.title} value={money(line.amount)} />
                  ))}
                </Amounts>
              )}
            </Fold>
          ) : null,
        )}
      </div>
      <p class="hint">{words.roundedNote}</p>
    </section>
  );
}

/** A step with its sign: what is taken away carries a minus, what is added a plus. */
const signed = (cents: number, money: (cents: number) => string) =>
  cents > 0 ? `+${money(cents)}` : `−${money(-cents)}`;
