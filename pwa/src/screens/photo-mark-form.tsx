import { useEffect, useId, useRef, useState } from "preact/hooks";
import { LENGTH_UNITS, MOST_LABEL, type PhotoMark } from "../data/photo-marks.ts";
import { parseQuantity } from "../engine/engine.ts";
import type { Quantity } from "../generated/types.ts";
import { described, Labelled } from "../parts/field.tsx";
import { photoViewWords as words } from "../words/photo.ts";

interface EntryProps {
  label: string;
  hint: string;
  stored: string;
  /** Just drawn: the field is entered at once, and can be left. */
  fresh: boolean;
  keep: (text: string) => Promise<string | undefined>;
  leave?: (() => void) | undefined;
}

/** One line of text for a mark, kept by a tap. */
function Entry(props: EntryProps) {
  const dom = useId();
  const field = useRef<HTMLInputElement>(null);
  const [text, setText] = useState(props.stored);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  useEffect(() => setText(props.stored), [props.stored]);
  useEffect(() => {
    if (props.fresh) field.current?.focus();
  }, [props.fresh]);
  return (
    <form
      class="photo-form"
      onSubmit={(e) => {
        e.preventDefault();
        void props.keep(text.trim()).then(setProblem);
      }}
    >
      <Labelled label={props.label} for={dom} hint={props.hint} problem={problem}>
        <input
          id={dom}
          ref={field}
          type="text"
          dir="auto"
          autocomplete="off"
          enterkeyhint="done"
          value={text}
          onInput={(e) => setText(e.currentTarget.value)}
          {...described(dom, props.hint, problem)}
        />
      </Labelled>
      <div class="button-row">
        {props.leave && (
          <button type="button" class="button" onClick={props.leave}>
            {words.leave}
          </button>
        )}
        <button type="submit" class="button button-main">
          {words.keep}
        </button>
      </div>
    </form>
  );
}

/** The words of a mark. A text without words would be no mark. */
export function WordsForm(props: {
  mark: PhotoMark;
  label: string;
  fresh?: boolean;
  keep: (text: string) => Promise<string | undefined>;
  leave?: () => void;
}) {
  return (
    <Entry
      label={props.label}
      hint={words.wordsHint(MOST_LABEL)}
      stored={props.mark.label ?? ""}
      fresh={props.fresh === true}
      leave={props.leave}
      keep={async (text) => {
        const have = [...text].length;
        if (have > MOST_LABEL) return words.tooLong(have, MOST_LABEL);
        if (have === 0 && props.mark.kind === "text") return words.empty;
        return props.keep(text);
      }}
    />
  );
}

/** How long the line just drawn is. */
export function LengthForm(props: {
  metric: boolean;
  keep: (length: Quantity) => Promise<string | undefined>;
  leave: () => void;
}) {
  return (
    <Entry
      label={words.length}
      hint={words.lengthHint}
      stored=""
      fresh
      leave={props.leave}
      keep={async (text) => {
        let length: Quantity;
        try {
          length = await parseQuantity(text, "length", props.metric ? "mm" : "in");
        } catch (cause) {
          return cause instanceof Error ? cause.message : String(cause);
        }
        if (!(LENGTH_UNITS as readonly string[]).includes(length.unit)) {
          return words.lengthUnits(LENGTH_UNITS.join(", "));
        }
        return length.n > 0 ? props.keep(length) : words.lengthSize;
      }}
    />
  );
}
