import { useId } from "preact/hooks";
import type { Odds } from "../generated/types.ts";
import { described } from "../parts/field.tsx";
import { readNumber } from "../parts/number.ts";
import { useDraft } from "../parts/use-draft.ts";
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
  const dom = useId();
  const draft = useDraft("shop/odds", JSON.stringify(textsOf(props.odds)), (text) => {
    const read = readOdds(JSON.parse(text) as Texts);
    return typeof read === "string" ? read : props.keep(read);
  });
  const texts = JSON.parse(draft.text) as Texts;
  const leave = (event: FocusEvent & { currentTarget: HTMLFieldSetElement }) => {
    if (!event.currentTarget.contains(event.relatedTarget as Node | null)) draft.flush();
  };
  return (
    <fieldset class={draft.problem ? "field field-wrong range" : "field range"} onFocusOut={leave}>
      <legend class="field-label">{words.odds}</legend>
      <p class="field-hint">{words.oddsHint}</p>
      <div class="range-row">
        {points.map((point) => (
          <label key={point} class="range-end">
            <span>{titles[point]}</span>
            <input
              type="text"
              inputMode="decimal"
              autocomplete="off"
              class="figures"
              value={texts[point]}
              onInput={(e) => draft.input(JSON.stringify({ ...texts, [point]: e.currentTarget.value }))}
              {...described(dom, undefined, draft.problem)}
            />
          </label>
        ))}
      </div>
      {draft.problem && (
        <p class="field-problem" id={`${dom}-problem`} role="alert">
          {draft.problem}
        </p>
      )}
    </fieldset>
  );
}
