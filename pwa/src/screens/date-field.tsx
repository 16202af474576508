import { useId, useState } from "preact/hooks";
import { described, Labelled } from "../parts/field.tsx";
import { comparablesWords as words } from "../words/comparables.ts";
import { today } from "./today.ts";

/** A day up to today; emptied it is removed. */
export function DateField(props: {
  label: string;
  hint: string;
  value: string;
  keep: (date: string) => Promise<string | undefined>;
}) {
  const dom = useId();
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const change = async (input: HTMLInputElement) => {
    const given = input.value;
    const limit = today();
    if (input.validity.badInput) setProblem(words.dateBad);
    else if (given > limit) setProblem(words.dateFuture(given, limit));
    else if (given !== "" && given < "1900") setProblem(words.dateOld(given));
    else setProblem(await props.keep(given));
  };
  return (
    <Labelled label={props.label} for={dom} hint={props.hint} problem={problem}>
      <input
        id={dom}
        type="date"
        max={today()}
        value={props.value}
        onChange={(e) => void change(e.currentTarget)}
        {...described(dom, props.hint, problem)}
      />
    </Labelled>
  );
}
