import { useId } from "preact/hooks";

/** A search over the list below it; nothing is kept of it. */
export function FindField(props: {
  label: string;
  hint?: string;
  text: string;
  onText: (text: string) => void;
}) {
  const id = useId();
  return (
    <div class="field">
      <label class="field-label" for={id}>
        {props.label}
      </label>
      <input
        id={id}
        type="text"
        inputMode="search"
        autocomplete="off"
        placeholder={props.hint}
        value={props.text}
        onInput={(e) => props.onText(e.currentTarget.value)}
      />
    </div>
  );
}

/** Whether every word of the search stands in the text, whatever the case and accents. */
export function matches(text: string, search: string): boolean {
  const bare = (s: string) => s.normalize("NFD").replace(/\p{M}/gu, "").toLocaleLowerCase();
  const hay = bare(text);
  return bare(search)
    .split(/\s+/)
    .every((word) => hay.includes(word));
}
