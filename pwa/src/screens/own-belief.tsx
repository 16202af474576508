import { useId } from "preact/hooks";
import type { CareBelief } from "../generated/types.ts";
import { described } from "../parts/field.tsx";
import { readNumber } from "../parts/number.ts";
import { saveValue } from "../parts/save.ts";
import { useDraft } from "../parts/use-draft.ts";
import type { ListingDoc } from "../parts/use-listing.ts";
import { resultScreenWords as words } from "../words/result.ts";

const classes = ["well", "ordinary", "neglected"] as const;
type Texts = Record<(typeof classes)[number], string>;

const titles: Texts = {
  well: words.careClasses[0],
  ordinary: words.careClasses[1],
  neglected: words.careClasses[2],
};

/** Three shares in per cent as one belief in basis points, or what is wrong with them. */
export function readBelief(texts: Texts): CareBelief | string {
  const belief: CareBelief = { well: 0, ordinary: 0, neglected: 0 };
  for (const name of classes) {
    const n = readNumber(texts[name], 0, 100);
    if (typeof n === "string") return words.beliefOf(titles[name], n);
    belief[name] = Math.round(n * 100);
  }
  const sum = belief.well + belief.ordinary + belief.neglected;
  return sum === 10_000 ? belief : words.beliefSum(String(sum / 100));
}

/** What the buyer believes of the keeping before looking: three shares kept as one, only when they make a whole. */
export function OwnBelief({
  listing,
  prior,
}: {
  listing: ListingDoc;
  prior: readonly [number, number, number];
}) {
  const dom = useId();
  const own = listing.values.has("care");
  const keep = (belief: CareBelief | null) =>
    saveValue(words.setBelief, listing.doc, "care", belief === null ? null : { ...belief });
  const stored: Texts = {
    well: String(prior[0] / 100),
    ordinary: String(prior[1] / 100),
    neglected: String(prior[2] / 100),
  };
  const draft = useDraft(`${listing.doc}/care`, JSON.stringify(stored), (text) => {
    const read = readBelief(JSON.parse(text) as Texts);
    return typeof read === "string" ? read : keep(read);
  });
  const texts = JSON.parse(draft.text) as Texts;
  const leave = (event: FocusEvent & { currentTarget: HTMLFieldSetElement }) => {
    if (!event.currentTarget.contains(event.relatedTarget as Node | null)) draft.flush();
  };
  return (
    <>
      <fieldset class={draft.problem ? "field field-wrong range" : "field range"} onFocusOut={leave}>
        <legend class="field-label">{words.beliefAsk}</legend>
        <p class="field-hint">{words.beliefHint}</p>
        <div class="range-row">
          {classes.map((name) => (
            <label key={name} class="range-end">
              <span>{words.beliefField(titles[name])}</span>
              <input
                type="text"
                inputMode="decimal"
                autocomplete="off"
                class="figures"
                value={texts[name]}
                onInput={(e) => draft.input(JSON.stringify({ ...texts, [name]: e.currentTarget.value }))}
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
      {own && (
        <button type="button" class="button" onClick={() => void keep(null)}>
          {words.beliefBack}
        </button>
      )}
    </>
  );
}
