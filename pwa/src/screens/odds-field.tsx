import type { Odds } from "../generated/types.ts";
import { readNumber } from "../parts/number.ts";
import { TextRow } from "../parts/text-row.tsx";
import { settingsWords as words } from "../words/settings.ts";

const points = ["opening", "fair", "walk_away"] as const;
type Texts = Record<(typeof points)[number], string>;

const titles: Texts = { opening: words.opening, fair: words.fair, walk_away: words.walkAway };
const textsOf = (odds: Odds): Texts => ({
  opening: String(odds.opening / 100),
  fair: String(odds.fair / 100),
  walk_away: String(odds.walk_away / 100),
});

/** The three odds as one value, or what is wrong with them. */
export function readOdds(texts: Texts): Odds | string {
  const odds: Odds = { opening: 0, fair: 0, walk_away: 0 };
  for (const point of points) {
    const n = readNumber(texts[point], 1, 99);
    if (typeof n === "string") return `${titles[point]}: ${n}`;
    odds[point] = Math.round(n * 100);
  }
  return odds.opening >= odds.fair && odds.fair >= odds.walk_away ? odds : words.oddsOrder;
}

/** Three chances kept together, and only in falling order. */
export function OddsField(props: { odds: Odds; keep: (odds: Odds) => Promise<string | undefined> }) {
  return (
    <TextRow
      id="shop/odds"
      label={words.odds}
      hint={words.oddsHint}
      names={points}
      titles={titles}
      texts={textsOf(props.odds)}
      keep={(texts) => {
        const read = readOdds(texts);
        return typeof read === "string" ? read : props.keep(read);
      }}
    />
  );
}
