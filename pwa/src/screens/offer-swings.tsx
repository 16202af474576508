import { swingBar, swingDomain } from "../charts/tornado.ts";
import { type TornadoAxis, TornadoBar, TornadoHead } from "../charts/tornado-bar.tsx";
import type { Result } from "../generated/types.ts";
import { showMoney } from "../parts/money.ts";
import { offerWords as words } from "../words/offer.ts";
import { rounded } from "./amounts.tsx";

/** More than these are too small to decide by. */
const shown = 5;

/** What the fair offer hangs on: the inputs that move it most, largest first, each in a picture and in words. */
export function OfferSwings({ result }: { result: Result }) {
  const { currency, offer } = result;
  const swings = result.swings.slice(0, shown).map((swing) => ({ swing, bar: swingBar(swing) }));
  if (swings.length === 0) return null;
  const bars = swings.map((s) => s.bar);
  const fair = offer.fair.none ? undefined : offer.fair.price;
  const show = (cents: number) => rounded(cents, currency);
  const axis: TornadoAxis = {
    domain: swingDomain(bars, fair),
    offer: fair,
    show,
    ends: bars.flatMap((b) => [show(b.from), show(b.to)]),
  };
  return (
    <section class="block">
      <h2 class="block-title">{words.swings}</h2>
      <p class="hint">{fair === undefined ? words.swingsHintNone : words.swingsHint}</p>
      <div class="swings">
        {fair !== undefined && (
          <TornadoHead axis={axis} label={words.swingsAround(showMoney(fair, currency))} />
        )}
        <ol>
          {swings.map(({ swing, bar }) => (
            <li key={swing.input} class="swing">
              <h3 class="small-head" dir="auto">
                {swing.title}
              </h3>
              <TornadoBar
                axis={axis}
                bar={bar}
                label={words.swingLabel(swing.title, show(bar.from), bar.fromAt, show(bar.to), bar.toAt)}
              />
              <p class="swing-ends" aria-hidden="true">
                <span>{words.swingAt(bar.fromAt)}</span>
                <span>{words.swingAt(bar.toAt)}</span>
              </p>
              <p>{swing.sentence}</p>
            </li>
          ))}
        </ol>
      </div>
    </section>
  );
}
