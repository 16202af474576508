import { useId } from "preact/hooks";
import { Labelled } from "../parts/field.tsx";
import { Fold } from "../parts/fold.tsx";
import type { Noticed } from "../parts/use-notice.ts";
import { noticeWords as words } from "../words/notice.ts";

/** Where an advertisement's text is pasted before there is a listing. */
export function PasteField(props: {
  text: string;
  open: boolean;
  paste: (text: string) => void;
  noticed: Noticed | undefined;
  /** How many fields were recognised besides the kind. */
  more: number;
}) {
  const dom = useId();
  const { noticed } = props;
  return (
    <Fold summary={words.pasteTitle} open={props.open}>
      <Labelled label={words.field} for={dom} hint={words.hint} problem={noticed?.problem}>
        <textarea
          id={dom}
          rows={5}
          dir="auto"
          value={props.text}
          onInput={(e) => props.paste(e.currentTarget.value)}
        />
      </Labelled>
      {noticed && !noticed.problem && (
        <p role="status">
          {noticed.proposals.length === 0 ? words.nothing : props.more > 0 && words.more(props.more)}
        </p>
      )}
    </Fold>
  );
}
