import { useId } from "preact/hooks";
import { moneyText, readMoney, showMoney } from "../parts/money.ts";
import { useDraft } from "../parts/use-draft.ts";
import { compareWords as words } from "../words/compare.ts";

/** A price to try in the table; emptied, it is what is asked again. Nothing of it is kept. */
export function TryPrice(props: {
  /** The listing. */
  id: string;
  letter: string;
  currency: string;
  asked: number | undefined;
  tried: number | undefined;
  keep: (cents: number | null) => void;
}) {
  const { asked, tried, currency } = props;
  const dom = useId();
  const stands = tried ?? asked;
  const draft = useDraft(`try/${props.id}`, stands === undefined ? "" : moneyText(stands), (text) => {
    if (text.trim() === "") {
      props.keep(null);
      return undefined;
    }
    const read = readMoney(text, currency);
    if (read.problem !== undefined) return read.problem;
    props.keep(read.cents === asked ? null : read.cents);
    return undefined;
  });
  return (
    <span class="try">
      <input
        id={dom}
        type="text"
        inputMode="decimal"
        autocomplete="off"
        class="figures"
        aria-label={words.tryPriceOf(props.letter)}
        value={draft.text}
        onInput={(e) => draft.input(e.currentTarget.value)}
        onBlur={draft.flush}
        {...(draft.problem ? { "aria-invalid": true, "aria-describedby": `${dom}-problem` } : {})}
      />
      {draft.problem && (
        <span class="field-problem" id={`${dom}-problem`} role="alert">
          {draft.problem}
        </span>
      )}
      {tried !== undefined && asked !== undefined && (
        <span class="row-note">{words.asked(showMoney(asked, currency))}</span>
      )}
    </span>
  );
}
