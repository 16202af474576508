import { useId, useRef } from "preact/hooks";
import { Labelled } from "../parts/field.tsx";
import { Fold } from "../parts/fold.tsx";
import { useHandOn } from "../parts/use-hand-on.ts";
import { visitWords as words } from "../words/visit.ts";

/** The message to the seller, to copy or hand on to another app; where neither works it can be copied by hand. */
export function VisitMessage({ text }: { text: string }) {
  const dom = useId();
  const field = useRef<HTMLTextAreaElement>(null);
  const fold = useRef<HTMLDivElement>(null);
  const mark = () => {
    const details = fold.current?.querySelector("details");
    if (details) details.open = true;
    field.current?.focus();
    field.current?.select();
  };
  const { said, copy, share } = useHandOn({ text, data: { text }, words, mark });
  return (
    <div class="visit-message" ref={fold}>
      <div class="button-row">
        <button type="button" class="button button-main" onClick={() => void copy()}>
          {words.copy}
        </button>
        {share && (
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
