import { useId, useRef, useState } from "preact/hooks";
import { Labelled } from "../parts/field.tsx";
import { Fold } from "../parts/fold.tsx";
import { visitWords as words } from "../words/visit.ts";

/** The message to the seller, to copy or hand on to another app; where neither works it can be copied by hand. */
export function VisitMessage({ text }: { text: string }) {
  const dom = useId();
  const field = useRef<HTMLTextAreaElement>(null);
  const fold = useRef<HTMLDivElement>(null);
  const [said, setSaid] = useState<string | undefined>(undefined);
  const mark = () => {
    const details = fold.current?.querySelector("details");
    if (details) details.open = true;
    field.current?.focus();
    field.current?.select();
    setSaid(words.notCopied);
  };
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text);
      setSaid(words.copied);
    } catch {
      // No clipboard without a secure address, or it was not allowed.
      mark();
    }
  };
  const share = async () => {
    try {
      await navigator.share({ text });
      setSaid(words.shared);
    } catch (cause) {
      if (!(cause instanceof DOMException && cause.name === "AbortError")) await copy();
    }
  };
  return (
    <div class="visit-message" ref={fold}>
      <div class="button-row">
        <button type="button" class="button button-main" onClick={() => void copy()}>
          {words.copy}
        </button>
        {typeof navigator.share === "function" && (
          <button type="button" class="button" onClick={() => void share()}>
            {words.share}
          </button>
        )}
      </div>
      <p role="status">{said}</p>
      <Fold summary={words.message}>
        <Labelled label={words.messageField} for={dom}>
          <textarea id={dom} ref={field} rows={12} readOnly dir="auto" value={text} />
        </Labelled>
      </Fold>
    </div>
  );
}
