import type { ComponentChildren } from "preact";
import { useId, useState } from "preact/hooks";
import type { Choice } from "../generated/types.ts";
import { fieldWords as words } from "../words/parts.ts";
import { moneyText, readMoney } from "./money.ts";
import { numberText, readNumber, readYear } from "./number.ts";
import { type Keep, useDraft } from "./use-draft.ts";

interface Common {
  label: string;
  /** Names the field across screens; a text that cannot be kept is remembered under it. */
  id: string;
  hint?: string | undefined;
  /** Said by the owner of the field, over what the field itself finds. */
  problem?: string | undefined;
}

/** A label, its control, and below it what is wrong with it. */
export function Labelled(props: {
  label: string;
  for: string;
  hint?: string | undefined;
  problem?: string | undefined;
  children: ComponentChildren;
}) {
  return (
    <div class={props.problem ? "field field-wrong" : "field"}>
      <label class="field-label" for={props.for}>
        {props.label}
      </label>
      {props.hint && (
        <p class="field-hint" id={`${props.for}-hint`}>
          {props.hint}
        </p>
      )}
      {props.children}
      {props.problem && (
        <p class="field-problem" id={`${props.for}-problem`} role="alert">
          {props.problem}
        </p>
      )}
    </div>
  );
}

/** What a control must carry so that its hint and problem are read out with it. */
export function described(id: string, hint?: string, problem?: string) {
  const by = [hint ? `${id}-hint` : "", problem ? `${id}-problem` : ""].filter(Boolean).join(" ");
  return {
    ...(by ? { "aria-describedby": by } : {}),
    ...(problem ? { "aria-invalid": true } : {}),
  };
}

/** Text that keeps itself. `keep` answers a problem or undefined. */
export function TextField(
  props: Common & {
    value: string;
    keep: Keep;
    lines?: number;
    most?: number;
    required?: boolean;
    inputMode?: "text" | "decimal" | "numeric" | "url";
  },
) {
  const dom = useId();
  const most = props.most ?? 300;
  const draft = useDraft(props.id, props.value, (text) => {
    if (props.required && text.trim() === "") return words.required;
    const have = [...text].length;
    if (have > most) return words.tooLong(have, most);
    return props.keep(text);
  });
  const problem = props.problem ?? draft.problem;
  const shared = {
    id: dom,
    value: draft.text,
    dir: "auto" as const,
    onBlur: draft.flush,
    ...described(dom, props.hint, problem),
  };
  return (
    <Labelled label={props.label} for={dom} hint={props.hint} problem={problem}>
      {props.lines ? (
        <textarea {...shared} rows={props.lines} onInput={(e) => draft.input(e.currentTarget.value)} />
      ) : (
        <input
          {...shared}
          type="text"
          autocomplete="off"
          inputMode={props.inputMode ?? "text"}
          onInput={(e) => draft.input(e.currentTarget.value)}
        />
      )}
    </Labelled>
  );
}

/** An amount of money; emptied it is removed (null). */
export function MoneyField(
  props: Common & {
    cents: number | undefined;
    currency: string;
    keep: (cents: number | null) => string | undefined | Promise<string | undefined>;
    required?: boolean;
  },
) {
  return (
    <TextField
      {...props}
      label={`${props.label} (${props.currency})`}
      value={props.cents === undefined ? "" : moneyText(props.cents)}
      inputMode="decimal"
      keep={(text) => {
        if (text.trim() === "" && !props.required) return props.keep(null);
        const read = readMoney(text, props.currency);
        return read.problem === undefined ? props.keep(read.cents) : read.problem;
      }}
    />
  );
}

/** A plain number within bounds; emptied it is removed (null). A decimal comma is read too. */
export function NumberField(
  props: Common & {
    value: number | undefined;
    low: number;
    high: number;
    whole?: boolean;
    required?: boolean;
    keep: (n: number | null) => string | undefined | Promise<string | undefined>;
  },
) {
  return (
    <TextField
      {...props}
      value={props.value === undefined ? "" : numberText(props.value)}
      inputMode={props.whole ? "numeric" : "decimal"}
      keep={(text) => {
        if (text.trim() === "" && !props.required) return props.keep(null);
        const read = readNumber(text, props.low, props.high, props.whole ?? false);
        return typeof read === "string" ? read : props.keep(read);
      }}
    />
  );
}

/** The year something was made; emptied it is removed (null). */
export function YearField(
  props: Common & {
    value: number | undefined;
    keep: (year: number | null) => string | undefined | Promise<string | undefined>;
  },
) {
  return (
    <TextField
      {...props}
      value={props.value === undefined ? "" : String(props.value)}
      inputMode="numeric"
      keep={(text) => {
        if (text.trim() === "") return props.keep(null);
        const read = readYear(text, new Date().getFullYear());
        return typeof read === "string" ? read : props.keep(read);
      }}
    />
  );
}

/** Chooses one; answers why it could not be kept, if it could not. */
type Choose = (id: string) => undefined | Promise<string | undefined>;

/** Keeps a choice and holds the reason when it could not be kept. */
function useChoose(keep: Choose): [string | undefined, (id: string) => void] {
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const choose = (id: string) => {
    const kept = keep(id);
    if (kept) void kept.then(setProblem);
  };
  return [problem, choose];
}

/** One of many, as the phone's own list. An empty id stands for not told. */
export function SelectField(
  props: Common & {
    value: string;
    choices: Choice[];
    keep: Choose;
    /** Words of the empty choice; without it none is offered. */
    unset?: string;
  },
) {
  const dom = useId();
  const [refused, choose] = useChoose(props.keep);
  const problem = props.problem ?? refused;
  return (
    <Labelled label={props.label} for={dom} hint={props.hint} problem={problem}>
      <select
        id={dom}
        value={props.value}
        onChange={(e) => choose(e.currentTarget.value)}
        {...described(dom, props.hint, problem)}
      >
        {(props.unset !== undefined || !props.choices.some((c) => c.id === props.value)) && (
          <option value="">{props.unset ?? words.unset}</option>
        )}
        {props.choices.map((c) => (
          <option key={c.id} value={c.id}>
            {c.title}
          </option>
        ))}
      </select>
    </Labelled>
  );
}

/** One of few, each a large target of its own. */
export function ChoiceField(
  props: Common & { value: string; choices: Choice[]; keep: Choose; row?: boolean },
) {
  const dom = useId();
  const [refused, choose] = useChoose(props.keep);
  const problem = props.problem ?? refused;
  return (
    <fieldset class={problem ? "field field-wrong choice" : "field choice"}>
      <legend class="field-label">{props.label}</legend>
      {props.hint && <p class="field-hint">{props.hint}</p>}
      <div class={props.row ? "choice-row" : "choice-list"}>
        {props.choices.map((c) => (
          <label key={c.id} class="choice-item">
            <input
              type="radio"
              name={dom}
              value={c.id}
              checked={props.value === c.id}
              onChange={() => choose(c.id)}
            />
            <span dir="auto">{c.title}</span>
          </label>
        ))}
      </div>
      {problem && (
        <p class="field-problem" role="alert">
          {problem}
        </p>
      )}
    </fieldset>
  );
}
