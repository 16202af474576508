import { useId, useState } from "preact/hooks";
import { Labelled } from "../parts/field.tsx";
import { Fold } from "../parts/fold.tsx";
import { importWords as words } from "../words/import.ts";

/** Phones name the kinds of such files in many ways. */
export const tableKinds =
  ".csv,.tsv,.txt,.tab,text/csv,text/plain,text/tab-separated-values,text/comma-separated-values,application/csv,application/vnd.ms-excel";

/** Where a table comes from: a file, or pasted text. */
export function ImportSource(props: { busy: boolean; read: (table: Blob, name: string) => void }) {
  const file = useId();
  const paste = useId();
  const [text, setText] = useState("");
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const readPasted = () => {
    const empty = text.trim() === "";
    setProblem(empty ? words.pasteEmpty : undefined);
    if (!empty) props.read(new Blob([text]), words.pasted);
  };
  return (
    <div class="block">
      <div class="photo-input">
        <input
          id={file}
          class="photo-file"
          type="file"
          accept={tableKinds}
          disabled={props.busy}
          onChange={(e) => {
            const chosen = e.currentTarget.files?.[0];
            e.currentTarget.value = "";
            if (chosen) props.read(chosen, chosen.name);
          }}
        />
        <label class="button" for={file}>
          {words.choose}
        </label>
      </div>
      <Fold summary={words.paste}>
        <Labelled label={words.pasteTable} for={paste} hint={words.pasteHint} problem={problem}>
          <textarea
            id={paste}
            class="import-paste"
            rows={4}
            value={text}
            onInput={(e) => setText(e.currentTarget.value)}
          />
        </Labelled>
        <button type="button" class="button" disabled={props.busy} onClick={readPasted}>
          {words.pasteRead}
        </button>
      </Fold>
    </div>
  );
}
