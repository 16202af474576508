import { useId, useRef, useState } from "preact/hooks";
import type { Range } from "../generated/types.ts";
import { rangeWords as words } from "../words/parts.ts";
import { described } from "./field.tsx";
import { moneyText, readMoney } from "./money.ts";
import { useDraft } from "./use-draft.ts";

const ends = ["low", "likely", "high"] as const;
type End = (typeof ends)[number];
type Texts = Record<End, string>;

const textsOf = (range: Range | undefined): Texts => ({
  low: range ? moneyText(range.low) : "",
  likely: range ? moneyText(range.likely) : "",
  high: range ? moneyText(range.high) : "",
});

/** Reads three amounts as one value: null when all are empty, or the problem and where it is. */
function readRange(texts: Texts, currency: string): Range | null | { problem: string; at: End | undefined } {
  if (ends.every((end) => texts[end].trim() === "")) return null;
  const range: Range = { low: 0, likely: 0, high: 0 };
  for (const end of ends) {
    if (texts[end].trim() === "") return { problem: words.incomplete, at: end };
    const read = readMoney(texts[end], currency);
    if (read.problem !== undefined) return { problem: read.problem, at: end };
    range[end] = read.cents;
  }
  if (range.low > range.likely || range.likely > range.high) return { problem: words.order, at: undefined };
  return range;
}

/**
 * At least, most likely and at most, kept together as one value and only when
 * the three fit; emptied altogether they are removed (null).
 */
export function RangeInput(props: {
  id: string;
  label: string;
  currency: string;
  range: Range | undefined;
  /** What holds while nothing is entered, shown in the empty fields. */
  example?: Range | undefined;
  hint?: string;
  keep: (range: Range | null) => string | undefined | Promise<string | undefined>;
}) {
  const dom = useId();
  const [at, setAt] = useState<End | undefined>(undefined);
  const group = useRef<HTMLFieldSetElement>(null);
  const draft = useDraft(props.id, JSON.stringify(textsOf(props.range)), (text) => {
    const read = readRange(JSON.parse(text) as Texts, props.currency);
    if (read !== null && "problem" in read) {
      setAt(read.at);
      return read.problem;
    }
    setAt(undefined);
    return props.keep(read);
  });
  const texts = JSON.parse(draft.text) as Texts;
  const example = textsOf(props.example);
  // Going from one of the three to the next does not leave the field.
  const leave = (event: FocusEvent) => {
    if (!group.current?.contains(event.relatedTarget as Node | null)) draft.flush();
  };
  return (
    <fieldset
      class={draft.problem ? "field field-wrong range" : "field range"}
      ref={group}
      onFocusOut={leave}
    >
      <legend class="field-label">{`${props.label} (${props.currency})`}</legend>
      {props.hint && <p class="field-hint">{props.hint}</p>}
      <div class="range-row">
        {ends.map((end) => (
          <label key={end} class="range-end">
            <span>{words[end]}</span>
            <input
              type="text"
              inputMode="decimal"
              autocomplete="off"
              class="figures"
              value={texts[end]}
              placeholder={example[end]}
              onInput={(e) => draft.input(JSON.stringify({ ...texts, [end]: e.currentTarget.value }))}
              {...described(
                dom,
                undefined,
                draft.problem && (at === undefined || at === end) ? draft.problem : undefined,
              )}
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
