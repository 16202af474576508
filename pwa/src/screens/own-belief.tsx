import type { CareBelief } from "../generated/types.ts";
import { readNumber } from "../parts/number.ts";
import { saveValue } from "../parts/save.ts";
import { TextRow } from "../parts/text-row.tsx";
import type { ListingDoc } from "../parts/use-listing.ts";
import { resultScreenWords as words } from "../words/result.ts";

const classes = ["well", "ordinary", "neglected"] as const;
type Texts = Record<(typeof classes)[number], string>;

const titles: Texts = {
  well: words.careClasses[0],
  ordinary: words.careClasses[1],
  neglected: words.careClasses[2],
};

const fields: Texts = {
  well: words.beliefField(titles.well),
  ordinary: words.beliefField(titles.ordinary),
  neglected: words.beliefField(titles.neglected),
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
  const own = listing.values.has("care");
  const keep = (belief: CareBelief | null) =>
    saveValue(words.setBelief, listing.doc, "care", belief === null ? null : { ...belief });
  const stored: Texts = {
    well: String(prior[0] / 100),
    ordinary: String(prior[1] / 100),
    neglected: String(prior[2] / 100),
  };
  return (
    <>
      <TextRow
        id={`${listing.doc}/care`}
        label={words.beliefAsk}
        hint={words.beliefHint}
        names={classes}
        titles={fields}
        texts={stored}
        keep={(texts) => {
          const read = readBelief(texts);
          return typeof read === "string" ? read : keep(read);
        }}
      />
      {own && (
        <button type="button" class="button" onClick={() => void keep(null)}>
          {words.beliefBack}
        </button>
      )}
    </>
  );
}
