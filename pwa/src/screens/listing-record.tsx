import { useId, useState } from "preact/hooks";
import { exportAppraisal } from "../data/archive.ts";
import { isOpen, linksOf } from "../data/links.ts";
import { Labelled, SelectField } from "../parts/field.tsx";
import { save } from "../parts/save.ts";
import { currentRubric } from "../parts/use-rubric.ts";
import { listingWords as words } from "../words/listing.ts";
import { handOut } from "./hand-out.ts";
import { type FieldsProps, keeper } from "./listing-fields.tsx";
import { judgeBy, RubricVersion } from "./rubric-version.tsx";

/** Date and kind of the appraisal, its file, and deleting it. */
export function ListingRecord(props: FieldsProps) {
  const { listing, catalogue, rubric } = props;
  return (
    <section class="block" aria-label={words.record}>
      <h2 class="block-title">{words.record}</h2>
      <DateField {...props} />
      {catalogue && (
        <SelectField
          id={`${listing.doc}/rubric`}
          label={words.kind}
          hint={words.kindHint}
          value={listing.rubric?.id ?? ""}
          choices={catalogue.rubrics.map((r) => ({ id: r.id, title: r.kind }))}
          keep={(id) => {
            const chosen = currentRubric(catalogue, id);
            return chosen && judgeBy(listing, chosen);
          }}
        />
      )}
      {rubric && <RubricVersion {...props} rubric={rubric} />}
      <ExportButton {...props} />
      <DeleteButton {...props} />
    </section>
  );
}

function DateField({ listing }: FieldsProps) {
  const dom = useId();
  const [problem, setProblem] = useState<string | undefined>(undefined);
  return (
    <Labelled label={words.date} for={dom} problem={problem}>
      <input
        id={dom}
        type="date"
        value={listing.text("date")}
        onChange={(e) => {
          const chosen = e.currentTarget.value;
          if (chosen === "") {
            setProblem(words.dateWrong);
            return;
          }
          void keeper(listing, "date")(chosen).then(setProblem);
        }}
      />
    </Labelled>
  );
}

function ExportButton({ listing, catalogue }: FieldsProps) {
  const [said, setSaid] = useState<{ good: string; problems: string[] } | undefined>(undefined);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  if (!catalogue) return null;
  const write = async () => {
    setProblem(undefined);
    try {
      const { name, blob, problems } = await exportAppraisal(listing.id, catalogue.carried);
      handOut(name, blob);
      setSaid({ good: words.exported(name), problems });
    } catch (cause) {
      setProblem(cause instanceof Error ? cause.message : String(cause));
    }
  };
  return (
    <div class="field">
      <button type="button" class="button" onClick={() => void write()}>
        {words.exportFile}
      </button>
      <p class="field-hint">{words.exportHint}</p>
      {said && <p role="status">{said.good}</p>}
      {said && said.problems.length > 0 && (
        <>
          <p class="field-problem">{words.leftOut(said.problems.length)}</p>
          <ul class="ruled">
            {said.problems.map((p) => (
              <li key={p}>{p}</li>
            ))}
          </ul>
        </>
      )}
      {problem && (
        <p class="field-problem" role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}

function DeleteButton({ listing }: FieldsProps) {
  const [problem, setProblem] = useState<string | undefined>(undefined);
  if (listing.deleted) return null;
  const open = linksOf(listing.values).filter(isOpen).length;
  const remove = () =>
    void save(words.deleteLabel, [{ doc: listing.doc, path: "deleted", value: true }]).then(setProblem);
  return (
    <div class="field">
      <button type="button" class="button button-away" onClick={remove}>
        {words.remove}
      </button>
      <p class="field-hint">{words.removeHint}</p>
      {open > 0 && (
        <p class="field-problem">
          {words.linksOpen(open)} <a href={`/listing/${listing.id}/hand-over`}>{words.toLinks}</a>
        </p>
      )}
      {problem && (
        <p class="field-problem" role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}
