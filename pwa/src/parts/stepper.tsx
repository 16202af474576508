import { useId, useState } from "preact/hooks";
import { stepperWords as words } from "../words/parts.ts";
import { described, Labelled } from "./field.tsx";
import { numberText, readNumber } from "./number.ts";
import { useDraft } from "./use-draft.ts";

/** The next of the marks below or above a value, or undefined at the end. */
export function nextMark(value: number, marks: readonly number[], up: boolean): number | undefined {
  return up ? marks.find((m) => m > value) : marks.findLast((m) => m < value);
}

/** A number that a thumb steps from mark to mark, or that is typed. */
export function Stepper(props: {
  id: string;
  label: string;
  hint?: string;
  value: number;
  /** Where the two buttons stop, rising. */
  marks: readonly number[];
  low: number;
  high: number;
  whole?: boolean;
  /** Keeps it, or answers why not in words for the field. */
  keep: (n: number) => string | undefined | Promise<string | undefined>;
}) {
  const dom = useId();
  const draft = useDraft(props.id, numberText(props.value), (text) => {
    const read = readNumber(text, props.low, props.high, props.whole ?? false);
    return typeof read === "string" ? read : props.keep(read);
  });
  const [refused, setRefused] = useState<string | undefined>(undefined);
  const step = async (up: boolean) => {
    const next = nextMark(props.value, props.marks, up);
    if (next !== undefined) setRefused(await props.keep(next));
  };
  const problem = draft.problem ?? refused;
  return (
    <Labelled label={props.label} for={dom} hint={props.hint} problem={problem}>
      <div class="stepper">
        <button
          type="button"
          class="button"
          aria-label={words.less(props.label)}
          disabled={nextMark(props.value, props.marks, false) === undefined}
          onClick={() => void step(false)}
        >
          <span aria-hidden="true">−</span>
        </button>
        <input
          id={dom}
          type="text"
          class="figures"
          inputMode={props.whole ? "numeric" : "decimal"}
          autocomplete="off"
          value={draft.text}
          onInput={(e) => draft.input(e.currentTarget.value)}
          onBlur={draft.flush}
          {...described(dom, props.hint, problem)}
        />
        <button
          type="button"
          class="button"
          aria-label={words.more(props.label)}
          disabled={nextMark(props.value, props.marks, true) === undefined}
          onClick={() => void step(true)}
        >
          <span aria-hidden="true">+</span>
        </button>
      </div>
    </Labelled>
  );
}
