import { useId } from "preact/hooks";
import { described } from "./field.tsx";
import { useDraft } from "./use-draft.ts";

/** Short figures side by side that are one value: kept together, when the row is left or typing pauses. */
export function TextRow<Name extends string>(props: {
  id: string;
  label: string;
  hint: string;
  /** In the order shown. */
  names: readonly Name[];
  titles: Record<Name, string>;
  texts: Record<Name, string>;
  /** Keeps what was typed, or answers why not. */
  keep: (texts: Record<Name, string>) => string | undefined | Promise<string | undefined>;
}) {
  const dom = useId();
  const draft = useDraft(props.id, JSON.stringify(props.texts), (text) =>
    props.keep(JSON.parse(text) as Record<Name, string>),
  );
  const texts = JSON.parse(draft.text) as Record<Name, string>;
  const leave = (event: FocusEvent & { currentTarget: HTMLFieldSetElement }) => {
    if (!event.currentTarget.contains(event.relatedTarget as Node | null)) draft.flush();
  };
  return (
    <fieldset class={draft.problem ? "field field-wrong range" : "field range"} onFocusOut={leave}>
      <legend class="field-label">{props.label}</legend>
      <p class="field-hint">{props.hint}</p>
      <div class="range-row">
        {props.names.map((name) => (
          <label key={name} class="range-end">
            <span>{props.titles[name]}</span>
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
  );
}
