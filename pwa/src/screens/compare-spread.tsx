import { niceDomain } from "../charts/scale.ts";
import { Whisker, WhiskerAxis } from "../charts/whisker.tsx";
import { compareWords as words } from "../words/compare.ts";
import { rounded } from "./amounts.tsx";
import type { Shown } from "./compare-side.ts";

/** How far each comes out ahead, with its spread, on one money scale. */
export function Ahead({ sides, currency }: { sides: readonly Shown[]; currency: string }) {
  const ends = sides.flatMap(({ side }) => [side.ahead_low, side.ahead, side.ahead_high]);
  const known = ends.filter((n) => n !== null);
  if (known.length === 0) return null;
  const domain = niceDomain(known, 4);
  return (
    <section class="block">
      <h2 class="block-title">{words.ahead}</h2>
      <p class="hint">{words.aheadHint(currency)}</p>
      <ul class="spreads">
        {sides.map((s) => (
          <li key={s.id}>
            <Spread of={s} currency={currency} domain={domain} />
          </li>
        ))}
      </ul>
      <WhiskerAxis domain={domain} />
    </section>
  );
}

function Spread(props: { of: Shown; currency: string; domain: readonly [number, number] }) {
  const { letter, side } = props.of;
  const { ahead, ahead_low: low, ahead_high: high } = side;
  const money = (cents: number) => rounded(cents, props.currency);
  const name = (
    <b dir="auto">
      <span class="letter">{letter}</span> {side.title === "" ? words.untitled : side.title}
    </b>
  );
  if (ahead === null || low === null || high === null) {
    return (
      <p class="spread-words">
        {name} <span class="faint">{words.noAhead}</span>
      </p>
    );
  }
  const says =
    ahead < 0
      ? words.behindOf(money(-ahead), money(low), money(high))
      : words.aheadOf(money(ahead), money(low), money(high));
  return (
    <>
      <p class="spread-words">
        {name} <span class="figures">{says}</span>
      </p>
      <Whisker
        low={low}
        mean={ahead}
        high={high}
        domain={props.domain}
        label={words.aheadLabel(letter, says)}
      />
    </>
  );
}
