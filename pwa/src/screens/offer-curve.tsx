import { inHundred, percent } from "../charts/format.ts";
import { type CurveMark, OddsCurve } from "../charts/odds-curve.tsx";
import type { Result } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { showMoney } from "../parts/money.ts";
import { offerWords as words } from "../words/offer.ts";
import { threePrices } from "./price-list.tsx";

/** The odds curve with the three prices and the asked one on it, and its figures. */
export function OfferCurve({ result }: { result: Result }) {
  const { offer, currency } = result;
  const marks: CurveMark[] = threePrices(offer)
    .filter((p) => !p.point.none)
    .map(({ id, shape, point }) => ({
      id,
      title: words.marks[id],
      shape,
      price: point.price,
      odds: point.odds,
    }));
  if (offer.at) {
    marks.push({
      id: "at",
      title: words.marks.at,
      shape: "diamond",
      price: offer.at.price,
      odds: offer.at.odds,
    });
  }
  const described = marks
    .map((m) => words.curvePoint(m.title, showMoney(m.price, currency), inHundred(m.odds)))
    .join(" ");
  return (
    <section class="block">
      <h2 class="block-title">{words.curve}</h2>
      <p class="hint">{words.curveAcross(currency)}</p>
      <OddsCurve
        curve={offer.curve}
        marks={marks}
        currency={currency}
        words={{ title: words.curveTitle, describe: words.curveDescribe(described) }}
      />
      <Fold summary={words.curveTable}>
        <table class="figures-table">
          <thead>
            <tr>
              <th scope="col">{words.columnPrice}</th>
              <th scope="col">{words.columnOdds}</th>
            </tr>
          </thead>
          <tbody>
            {marks.map((m) => (
              <tr key={m.id}>
                <th scope="row">
                  {m.title} {showMoney(m.price, currency)}
                </th>
                <td>{percent(m.odds)}</td>
              </tr>
            ))}
            {offer.curve.map((p) => (
              <tr key={p.price}>
                <th scope="row">{showMoney(p.price, currency)}</th>
                <td>{percent(p.odds)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Fold>
    </section>
  );
}
