import { useId, useState } from "preact/hooks";
import { parseQuantity } from "../engine/engine.ts";
import type { Quantity } from "../generated/types.ts";
import { fieldWords } from "../words/parts.ts";
import { described, Labelled } from "./field.tsx";
import { useDraft } from "./use-draft.ts";

/** Texts as they were typed, by field: 3/8 stays 3/8 for as long as it is what is kept. */
const typed = new Map<string, { text: string; value: Quantity }>();

function shown(id: string, value: Quantity | undefined): string {
  if (!value) return "";
  const known = typed.get(id);
  return known && known.value.n === value.n && known.value.unit === value.unit ? known.text : String(value.n);
}

/**
 * A measured quantity: typed text read by the engine ("1 1/2", "9,5 mm"), with
 * the unit that holds when none is typed beside it.
 */
export function QuantityInput(props: {
  id: string;
  label: string;
  hint?: string | undefined;
  problem?: string | undefined;
  dimension: string;
  /** Units offered, the usual one first; "" for a count. */
  units: string[];
  value: Quantity | undefined;
  keep: (value: Quantity | null) => Promise<string | undefined>;
  /** Told when the text cannot be read as a quantity. */
  unread?: (() => void) | undefined;
}) {
  const dom = useId();
  const [chosen, setChosen] = useState<string | undefined>(undefined);
  const unit = props.value?.unit ?? chosen ?? props.units[0] ?? "";
  const units = props.units.includes(unit) || unit === "" ? props.units : [...props.units, unit];
  const draft = useDraft(props.id, shown(props.id, props.value), async (text) => {
    typed.delete(props.id);
    if (text.trim() === "") return props.keep(null);
    const value = await parseQuantity(text, props.dimension, unit).catch((cause: unknown) => {
      props.unread?.();
      throw cause;
    });
    // A unit typed behind the number moves to its place beside the field.
    if (/[\d.,/\s]$/.test(text)) typed.set(props.id, { text: text.trim(), value });
    return props.keep(value);
  });
  const problem = draft.problem ?? props.problem;
  const choose = (next: string) => {
    setChosen(next);
    // The number stands: it was the unit that was wrong.
    if (props.value) void props.keep({ n: props.value.n, unit: next });
  };
  return (
    <Labelled label={props.label} for={dom} hint={props.hint} problem={problem}>
      <div class={unit === "" && units.length < 2 ? undefined : "with-unit"}>
        <input
          id={dom}
          type="text"
          class="figures"
          inputMode={props.dimension === "number" ? "numeric" : "text"}
          autocomplete="off"
          enterkeyhint="next"
          value={draft.text}
          onInput={(e) => draft.input(e.currentTarget.value)}
          onBlur={draft.flush}
          {...described(dom, props.hint, problem)}
        />
        {units.length > 1 ? (
          <select
            aria-label={fieldWords.unit(props.label)}
            value={unit}
            onChange={(e) => choose(e.currentTarget.value)}
          >
            {units.map((u) => (
              <option key={u} value={u}>
                {u}
              </option>
            ))}
          </select>
        ) : (
          unit !== "" && <span class="unit-mark">{unit}</span>
        )}
      </div>
    </Labelled>
  );
}
