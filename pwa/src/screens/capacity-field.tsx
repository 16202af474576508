import { useId, useState } from "preact/hooks";
import type { Capacity, Quantity } from "../generated/types.ts";
import { described, Labelled } from "../parts/field.tsx";
import { numberText, readQuantity } from "../parts/number.ts";
import { useDraft } from "../parts/use-draft.ts";
import { comparablesWords as words } from "../words/comparables.ts";

/** Units offered for a size: the rubric's own first. */
export const sizeUnits = (size: Capacity): string[] => [size.unit, ...(size.other ?? [])];

/** A number with its unit, typed behind it or chosen beside it, kept together as one value; emptied it is removed (null). */
export function QuantityField(props: {
  id: string;
  label: string;
  hint?: string;
  units: readonly string[];
  value: Quantity | undefined;
  /** The number must be larger than this, or equal where `zero` allows it. */
  zero?: boolean;
  most: number;
  keep: (quantity: Quantity | null) => string | undefined | Promise<string | undefined>;
}) {
  const dom = useId();
  const [unit, setUnit] = useState(props.value?.unit ?? props.units[0] ?? "");
  const known = props.value?.unit ?? unit;
  const units = props.units.includes(known) ? props.units : [...props.units, known];
  const read = (text: string) => {
    if (text.trim() === "") return props.keep(null);
    const quantity = readQuantity(text, known, units, props.most);
    if (typeof quantity === "string") return quantity;
    if (quantity.n === 0 && !props.zero) return words.moreThanZero;
    setUnit(quantity.unit);
    return props.keep(quantity);
  };
  const draft = useDraft(props.id, props.value ? numberText(props.value.n) : "", read);
  return (
    <Labelled label={`${props.label} (${known})`} for={dom} hint={props.hint} problem={draft.problem}>
      <div class="with-unit">
        <input
          id={dom}
          type="text"
          inputMode="decimal"
          autocomplete="off"
          value={draft.text}
          onInput={(e) => draft.input(e.currentTarget.value)}
          onBlur={draft.flush}
          {...described(dom, props.hint, draft.problem)}
        />
        {units.length === 1 ? (
          <span class="unit-mark">{known}</span>
        ) : (
          <select
            aria-label={words.unitOf(props.label)}
            value={known}
            onChange={(e) => {
              const next = e.currentTarget.value;
              setUnit(next);
              draft.flush();
              if (props.value) void props.keep({ n: props.value.n, unit: next });
            }}
          >
            {units.map((u) => (
              <option key={u} value={u}>
                {u}
              </option>
            ))}
          </select>
        )}
      </div>
    </Labelled>
  );
}
