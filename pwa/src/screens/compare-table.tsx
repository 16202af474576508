import type { ComponentChildren } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { inHundred, percent, plain } from "../charts/format.ts";
import type { PricePoint } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { Hazard } from "../parts/hazard.tsx";
import { showMoney } from "../parts/money.ts";
import { compareWords as words } from "../words/compare.ts";
import { rounded } from "./amounts.tsx";
import { causesOf } from "./compare-bars.tsx";
import type { Figures, Shown } from "./compare-side.ts";

interface Row {
  id: string;
  name: string;
  strong?: boolean;
  cell: (of: Shown, place: number) => ComponentChildren;
}

/** What every table has; the first is the verdict, which nothing outweighs. */
function rowsOf(currency: string, priceOf: (of: Shown) => ComponentChildren): Row[] {
  const cause = (at: number) => (of: Shown) => {
    const part = of.side.all_in && causesOf(of.side.all_in)[at];
    return part ? rounded(part[1], currency) : words.notTold;
  };
  const point = (of: PricePoint | null) => {
    if (!of) return words.notTold;
    return of.none ? words.noOffer : showMoney(of.price, currency);
  };
  return [
    {
      id: "verdict",
      name: words.verdict,
      cell: ({ side }) => (
        <>
          <Hazard word={side.verdict.hazard} small /> <b>{side.verdict.title}</b>
        </>
      ),
    },
    { id: "place", name: words.standing, cell: ({ side }, place) => standing(side, place) },
    { id: "price", name: words.tryPrice, cell: priceOf },
    { id: "dues", name: words.parts.dues, cell: cause(1) },
    { id: "landing", name: words.parts.landing, cell: cause(2) },
    { id: "repair", name: words.parts.repair, cell: cause(3) },
    { id: "hidden", name: words.parts.hidden, cell: cause(4) },
    {
      id: "all-in",
      name: words.allIn,
      strong: true,
      cell: ({ side }) => (side.all_in ? rounded(side.all_in.total, currency) : words.notTold),
    },
    {
      id: "odds",
      name: words.odds,
      strong: true,
      cell: ({ side }) => (side.odds === null ? words.notTold : words.oddsIn(inHundred(side.odds))),
    },
    { id: "ahead", name: words.aheadShort, cell: ({ side }) => <Ahead side={side} currency={currency} /> },
    { id: "fair", name: words.fair, cell: ({ side }) => point(side.fair) },
    { id: "walk-away", name: words.walkAway, cell: ({ side }) => point(side.walk_away) },
    { id: "safety", name: words.safety, cell: ({ side }) => percent(side.safety.coverage / 100) },
    { id: "condition", name: words.condition, cell: ({ side }) => percent(side.condition.coverage / 100) },
    {
      id: "days",
      name: words.days,
      strong: true,
      cell: ({ side: { days } }) =>
        days ? words.daysOf(plain(days.likely), plain(days.low), plain(days.high)) : words.daysNever,
    },
    { id: "hours", name: words.hours, cell: ({ side }) => words.hoursOf(plain(side.hours)) },
    {
      id: "hides",
      name: words.hides,
      cell: ({ side }) => (
        <>
          {rounded(side.hides, currency)}
          <span class="row-note">{words.open(side.open)}</span>
        </>
      ),
    },
    { id: "dearest", name: words.dearest, cell: ({ side }) => <Dearest side={side} currency={currency} /> },
    {
      id: "distance",
      name: words.distance,
      cell: ({ side: { distance } }) => (distance ? `${plain(distance.n)} ${distance.unit}` : words.notTold),
    },
  ];
}

function standing(side: Figures, place: number): string {
  if (side.gate !== "") return words.last;
  return side.score === null
    ? words.place(place)
    : `${words.place(place)} · ${words.score(plain(Math.round(side.score)))}`;
}

function Ahead({ side, currency }: { side: Figures; currency: string }) {
  if (side.ahead === null) return <>{words.notTold}</>;
  const money = (n: number) => rounded(n, currency);
  return (
    <>
      {side.ahead < 0 ? words.loss(money(-side.ahead)) : money(side.ahead)}
      {side.ahead_low !== null && side.ahead_high !== null && (
        <span class="row-note">{words.spanOf(money(side.ahead_low), money(side.ahead_high))}</span>
      )}
    </>
  );
}

function Dearest({ side, currency }: { side: Figures; currency: string }) {
  if (side.dearest.length === 0) return <>{words.noDearest}</>;
  return (
    <ul class="dearest">
      {side.dearest.map((p) => (
        <li key={p.title}>{words.dearestOf(p.title, rounded(p.mean, currency))}</li>
      ))}
    </ul>
  );
}

/**
 * Listings as columns, what is known of each as rows: on a desk a table whose heads
 * stay, on a phone two columns at a time that snap, with the letters above to jump by.
 */
export function SideTable(props: {
  sides: readonly Shown[];
  currency: string;
  priceOf?: (of: Shown) => ComponentChildren;
  hint?: string;
}) {
  const { sides, currency } = props;
  const rows = rowsOf(
    currency,
    props.priceOf ?? (({ side }) => (side.price === null ? words.notTold : showMoney(side.price, currency))),
  );
  const box = useRef<HTMLElement>(null);
  const { seen, show } = useColumns(box, sides.length);
  return (
    <section class="block">
      <h2 class="block-title" id="side-table">
        {words.cards}
      </h2>
      {props.hint && <p class="hint">{props.hint}</p>}
      <nav class="jumps" aria-label={words.jump} style={{ "--jumps": sides.length > 6 ? 4 : sides.length }}>
        {sides.map((s, i) => (
          <button
            key={s.id}
            type="button"
            class="jump"
            aria-pressed={seen.includes(i)}
            aria-label={words.jumpTo(s.letter, s.side.title)}
            onClick={() => show(i)}
          >
            {s.letter}
          </button>
        ))}
      </nav>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys. */}
      <section class="side-box" ref={box} tabIndex={0} aria-labelledby="side-table">
        <table class="side-table" style={{ "--columns": sides.length }}>
          <thead>
            <tr>
              <th scope="col" class="side-corner">
                <span class="seen-by-reader">{words.causes}</span>
              </th>
              {sides.map((s) => (
                <th key={s.id} scope="col" class={s.side.gate === "" ? "" : "side-barred"}>
                  <a class="side-name" href={`/listing/${s.id}/result`}>
                    <span class="letter">{s.letter}</span>
                    <span dir="auto">{s.side.title}</span>
                  </a>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.id} class={row.strong ? "side-strong" : ""} data-row={row.id}>
                <th scope="row">
                  <span>{row.name}</span>
                </th>
                {sides.map((s, i) => (
                  <td key={s.id} class={s.side.gate === "" ? "figures" : "figures side-barred"}>
                    {row.cell(s, i + 1)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {sides.some((s) => s.side.missing) && (
        <ul class="always">
          {sides.map((s) => s.side.missing && <li key={s.id}>{`${s.letter}: ${s.side.missing}`}</li>)}
        </ul>
      )}
      <Fold summary={words.daysHow}>
        {sides.map(({ id, letter, side }) => (
          <p key={id}>
            <span class="letter">{letter}</span> {side.days ? side.days.steps.join(" ") : words.daysNever}
          </p>
        ))}
      </Fold>
    </section>
  );
}

/** Which columns are in sight, and how to bring one there. */
function useColumns(box: { current: HTMLElement | null }, columns: number) {
  const [seen, setSeen] = useState<number[]>([0, 1]);
  const step = () => {
    const cells = box.current?.querySelectorAll<HTMLElement>("thead th:not(.side-corner)");
    const [first, second] = [cells?.[0], cells?.[1]];
    return first && second ? second.offsetLeft - first.offsetLeft : 0;
  };
  useEffect(() => {
    const at = box.current;
    if (!at) return;
    let waiting = 0;
    const look = () => {
      waiting = 0;
      const wide = step();
      if (wide <= 0) return;
      const first = Math.round(Math.abs(at.scrollLeft) / wide);
      setSeen((now) => (now[0] === first ? now : [first, first + 1]));
    };
    const scrolled = () => {
      if (waiting === 0) waiting = requestAnimationFrame(look);
    };
    at.addEventListener("scroll", scrolled, { passive: true });
    return () => {
      at.removeEventListener("scroll", scrolled);
      cancelAnimationFrame(waiting);
    };
  }, [columns]);
  const show = (i: number) => {
    const calm = matchMedia("(prefers-reduced-motion: reduce)").matches;
    box.current?.scrollTo({
      left: Math.max(0, Math.min(i, columns - 2)) * step(),
      behavior: calm ? "auto" : "smooth",
    });
  };
  return { seen, show };
}
