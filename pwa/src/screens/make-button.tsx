import { useState } from "preact/hooks";
import { paperWords as words } from "../words/papers.ts";

/** Makes a file when tapped, and says what became of it. `make` answers the name it was saved under. */
export function MakeButton(props: { label: string; hint?: string; make: () => Promise<string> }) {
  const [busy, setBusy] = useState(false);
  const [said, setSaid] = useState<{ good?: string; problem?: string }>({});
  const go = async () => {
    setBusy(true);
    setSaid({});
    try {
      setSaid({ good: words.saved(await props.make()) });
    } catch (cause) {
      setSaid({ problem: cause instanceof Error ? cause.message : String(cause) });
    }
    setBusy(false);
  };
  return (
    <div class="field">
      <button type="button" class="button" disabled={busy} onClick={() => void go()}>
        {busy ? words.making : props.label}
      </button>
      {props.hint && <p class="field-hint">{props.hint}</p>}
      {said.good && <p role="status">{said.good}</p>}
      {said.problem && (
        <p class="field-problem" role="alert">
          {said.problem}
        </p>
      )}
    </div>
  );
}
