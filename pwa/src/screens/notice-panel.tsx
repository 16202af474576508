import "../style/visit.css";
import { useMemo, useState } from "preact/hooks";
import type { Proposal } from "../generated/types.ts";
import { TextField } from "../parts/field.tsx";
import { Fold } from "../parts/fold.tsx";
import { showMoney } from "../parts/money.ts";
import { Banner } from "../parts/page.tsx";
import { saveValue } from "../parts/save.ts";
import { useNotice } from "../parts/use-notice.ts";
import { listingWords } from "../words/listing.ts";
import { noticeWords as words } from "../words/notice.ts";
import type { FieldsProps } from "./listing-fields.tsx";
import { agrees, proposedValue, type Told, take, takeable, toldBy, unconfirmed } from "./notice-take.ts";
import { today } from "./today.ts";
import { valueText } from "./value-words.ts";

/** The text of the listing, and what it tells, to be taken by a tap. `open` where the listing was just made. */
export function NoticePanel(props: FieldsProps & { open: boolean }) {
  const { listing, catalogue, rubric, shop } = props;
  const carried = catalogue?.carried.rubrics.some((r) => r.id === rubric?.id && r.version === rubric.version);
  const own = useMemo(() => (rubric && carried === false ? [rubric] : []), [rubric, carried]);
  const text = listing.text("text");
  const noticed = useNotice(text, shop, { rubric: rubric?.id, own, date: today() });
  const all = toldBy(noticed?.proposals ?? [], listing.values, rubric);
  const left = unconfirmed(all);
  return (
    <Fold summary={words.title} aside={words.aside(left.length)} open={props.open}>
      <TextField
        id={`${listing.doc}/text`}
        label={words.field}
        hint={words.hint}
        value={text}
        lines={5}
        most={20_000}
        keep={(typed) =>
          saveValue(
            listingWords.labels.text ?? "text",
            listing.doc,
            "text",
            typed.trim() === "" ? null : typed,
          )
        }
      />
      {text.trim() !== "" && !noticed && <p role="status">{words.reading}</p>}
      {noticed?.problem && (
        <Banner tone="problem" urgent>
          {noticed.problem}
        </Banner>
      )}
      {noticed && !noticed.problem && <Found {...props} all={all} left={left} />}
    </Fold>
  );
}

function Found(props: FieldsProps & { all: Told[]; left: Told[] }) {
  const { listing, all, left } = props;
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const [busy, setBusy] = useState(false);
  const keep = async (chosen: { told: Told; proposal: Proposal }[], label: string) => {
    setBusy(true);
    setProblem(await take(listing, chosen, label));
    setBusy(false);
  };
  const ready = takeable(left);
  if (all.length === 0) return <p role="status">{words.nothing}</p>;
  return (
    <>
      <p role="status">{left.length === 0 ? words.allStand : words.foundHint}</p>
      {problem && (
        <p class="field-problem" role="alert">
          {problem}
        </p>
      )}
      {ready.length > 0 && (
        <button
          type="button"
          class="button button-main"
          disabled={busy}
          onClick={() => void keep(ready, words.allLabel)}
        >
          {words.useAll(ready.length)}
        </button>
      )}
      <div>
        {all.map((told) => (
          <Field
            key={told.path}
            {...props}
            told={told}
            busy={busy}
            use={(proposal) => void keep([{ told, proposal }], words.label(told.title))}
          />
        ))}
      </div>
    </>
  );
}

function Field(props: FieldsProps & { told: Told; busy: boolean; use: (p: Proposal) => void }) {
  const { told } = props;
  const currency = props.shop?.currency ?? "";
  const known = { catalogue: props.catalogue, rubric: props.rubric, currency };
  const other = told.now !== undefined && !told.proposals.some((p) => agrees(told, p));
  return (
    <fieldset class="notice-field">
      <legend class="small-head">{told.title}</legend>
      {other && told.now !== undefined && (
        <p class="quiet" dir="auto">
          {words.now(valueText(told.path, told.now, known))}
        </p>
      )}
      {told.proposals.map((p) => {
        const value = shown(p, currency) ?? valueText(told.path, proposedValue(p), known);
        return (
          <div class="notice-one" key={`${p.start}/${value}`}>
            <span>
              <span class="notice-value" dir="auto">
                {value}
              </span>
              <span class="row-note">
                {words.sure[p.sure] ?? p.sure}: {p.because}
              </span>
            </span>
            {agrees(told, p) ? (
              <span class="quiet">{words.stands}</span>
            ) : (
              p.foreign === undefined && (
                <button type="button" class="button" disabled={props.busy} onClick={() => props.use(p)}>
                  {words.use}
                  <span class="seen-by-reader">{words.useWhat(told.title, value)}</span>
                </button>
              )
            )}
            <Quote proposal={p} />
            {p.foreign !== undefined && <p class="notice-quote">{words.foreign(p.foreign, currency)}</p>}
          </div>
        );
      })}
    </fieldset>
  );
}

/** The words it was read from, marked in what stands about them. */
export function Quote({ proposal: p }: { proposal: Proposal }) {
  return (
    <span class="notice-quote" dir="auto">
      “{p.before}
      <mark>{p.words}</mark>
      {p.after}”
    </span>
  );
}

/** A value as it reads where it is not kept as a person reads it; a price of other money stands as it was written. */
function shown(p: Proposal, currency: string): string | undefined {
  if (p.foreign !== undefined) return p.words;
  if (p.cents !== undefined) return showMoney(p.cents, currency);
  return p.title;
}
