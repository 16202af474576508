import { isRecord, rangeOf } from "../data/shape.ts";
import type { Json } from "../data/value.ts";
import type { Line, Range } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { RangeInput } from "../parts/range-input.tsx";
import { saveValue } from "../parts/save.ts";
import type { ListingDoc } from "../parts/use-listing.ts";
import { estimateWords as words } from "../words/estimate.ts";
import { rounded } from "./amounts.tsx";
import { Parts, Work } from "./estimate-line.tsx";
import type { Lookup } from "./rubric-lookup.ts";

interface Choice {
  /** undefined: nobody chose, so fit and rubric decide. */
  off: boolean | undefined;
  cost: Range | undefined;
}

/** The user's own figure and whether a line is left out, as kept. */
function choiceOf(value: Json | undefined): Choice {
  if (!isRecord(value)) return { off: undefined, cost: undefined };
  return { off: value.off === true, cost: rangeOf(value.cost) };
}

/** One cost between the handshake and a connected machine: computed, own, or left out. */
export function LandingLine(props: { listing: ListingDoc; line: Line; currency: string; lookup: Lookup }) {
  const { listing, line, currency } = props;
  const path = `landing/${line.id}`;
  const choice = choiceOf(listing.values.get(path));
  const keep = (next: Choice) =>
    saveValue(
      words.setLanding,
      listing.doc,
      path,
      next.off !== undefined || next.cost
        ? {
            ...(next.off === undefined ? {} : { off: next.off }),
            ...(next.cost ? { cost: { ...next.cost } } : {}),
          }
        : null,
    );
  // A line that follows the shop must be told on purpose that it counts.
  const follows = props.lookup.rubric?.landing.some((l) => l.id === line.id && l.fit !== undefined) ?? false;
  const counts = follows ? !line.off : choice.off !== true;
  const count = (yes: boolean) => (yes ? (follows ? false : undefined) : true);
  return (
    <Fold
      summary={
        <span dir="auto">
          {line.title}
          {line.own && !line.off && <span class="row-note">{words.ownFigure}</span>}
        </span>
      }
      aside={line.off ? words.off : rounded(line.mean, currency)}
    >
      <label class="choice-item">
        <input
          type="checkbox"
          checked={counts}
          onChange={(e) => void keep({ ...choice, off: count(e.currentTarget.checked) })}
        />
        <span>{words.countIt}</span>
      </label>
      {line.says && <p class="hint">{line.says}</p>}
      {follows && choice.off !== undefined && (
        <button type="button" class="button" onClick={() => void keep({ ...choice, off: undefined })}>
          {words.follow}
        </button>
      )}
      {!line.off && !line.own && <Parts parts={line.parts ?? []} currency={currency} lookup={props.lookup} />}
      {!line.off && !line.own && <Work line={line} currency={currency} lookup={props.lookup} />}
      {counts && (
        <RangeInput
          id={`${listing.doc}/${path}`}
          label={words.ownCost}
          currency={currency}
          range={choice.cost}
          example={line.own ? undefined : line.cost}
          hint={words.emptyIsComputed}
          keep={(range) => keep({ off: choice.off, cost: range ?? undefined })}
        />
      )}
      {line.stays && <p class="hint">{words.stays}</p>}
    </Fold>
  );
}
