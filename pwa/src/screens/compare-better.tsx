import { inHundred } from "../charts/format.ts";
import type { Comparison } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { compareWords as words } from "../words/compare.ts";
import { rounded } from "./amounts.tsx";
import { type Behind, catchingUp, type Lettered } from "./compare-side.ts";

/** How often one is the better buy than another, as a small table. */
export function Better({ comparison, sides }: { comparison: Comparison; sides: readonly Lettered[] }) {
  const priced = sides.filter((a) => sides.some((b) => oddsOf(comparison, a, b) !== null));
  if (priced.length < 2) return null;
  return (
    <section class="block">
      <h2 class="block-title">{words.better}</h2>
      <p class="hint">
        {words.betterHint}
        {priced.some((s) => s.side.gate !== "") && ` ${words.betterBarred}`}
      </p>
      <table class="better">
        <thead>
          <tr>
            <th scope="col">
              <span class="seen-by-reader">{words.betterRow}</span>
            </th>
            {priced.map((b) => (
              <th key={b.id} scope="col">
                <Letter of={b} />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {priced.map((a) => (
            <tr key={a.id}>
              <th scope="row">
                <Letter of={a} />
              </th>
              {priced.map((b) => (
                <td key={b.id} class="figures">
                  <Cell a={a} b={b} odds={oddsOf(comparison, a, b)} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** The letter, marked where no odds make up for the verdict. */
function Letter({ of }: { of: Lettered }) {
  if (of.side.gate === "") return <>{of.letter}</>;
  return (
    <>
      {of.letter}
      <span aria-hidden="true">▲</span>
      <span class="seen-by-reader">, {of.side.verdict.title}</span>
    </>
  );
}

const oddsOf = (comparison: Comparison, a: Lettered, b: Lettered): number | null =>
  comparison.better[a.at]?.[b.at] ?? null;

function Cell({ a, b, odds }: { a: Lettered; b: Lettered; odds: number | null }) {
  if (odds === null) return <span aria-hidden="true">·</span>;
  return (
    <>
      <span aria-hidden="true" class={odds > 0.5 ? "better-more" : ""}>
        {odds > 0 && odds < 0.005 ? "<1" : inHundred(odds)}
      </span>
      <span class="seen-by-reader">{words.betterOf(a.letter, inHundred(odds), b.letter)}</span>
    </>
  );
}

/** More pairs than these open. */
const shown = 3;

/** The price at which one behind would draw level, in words. */
export function CatchingUp({ comparison, sides }: { comparison: Comparison; sides: readonly Lettered[] }) {
  const pairs = catchingUp(comparison, sides);
  if (pairs.length === 0) return null;
  const list = (of: Behind[]) => (
    <ul class="always">
      {of.map((p) => (
        <li key={`${p.behind.id}/${p.ahead.id}`}>
          {p.price < 0
            ? words.overtakeNever(p.behind.letter, p.ahead.letter)
            : words.overtakeOf(p.behind.letter, p.ahead.letter, rounded(p.price, comparison.currency))}
        </li>
      ))}
    </ul>
  );
  const rest = pairs.slice(shown);
  return (
    <section class="block">
      <h2 class="block-title">{words.overtake}</h2>
      {list(pairs.slice(0, shown))}
      {rest.length > 0 && <Fold summary={words.overtakeMore(rest.length)}>{list(rest)}</Fold>}
    </section>
  );
}
