import { useState } from "preact/hooks";
import { loadAppraisalFile } from "../data/file.ts";
import { keepRubric } from "../data/rubric.ts";
import { rubricChanges } from "../engine/engine.ts";
import type { Change, Rubric } from "../generated/types.ts";
import { save } from "../parts/save.ts";
import type { ListingDoc } from "../parts/use-listing.ts";
import { currentRubric } from "../parts/use-rubric.ts";
import { rubricWords as words } from "../words/rubric.ts";
import type { FieldsProps } from "./listing-fields.tsx";

/** Makes a listing be judged by a rubric from now on, and keeps that very rubric. */
export async function judgeBy(listing: ListingDoc, rubric: Rubric): Promise<string | undefined> {
  const { mark, changes } = await keepRubric(rubric);
  return save(words.judgeBy(rubric.kind, rubric.version), [
    ...changes,
    { doc: listing.doc, path: "rubric", value: { ...mark } },
  ]);
}

/** Which version an appraisal was made with, and the way to a newer one. */
export function RubricVersion({ listing, catalogue, rubric }: FieldsProps & { rubric: Rubric }) {
  const [changes, setChanges] = useState<Change[] | undefined>(undefined);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const now = currentRubric(catalogue, rubric.id);
  if (!catalogue || !now || now.version === rubric.version) {
    return <p class="quiet">{words.madeWith(rubric.version)}</p>;
  }
  const look = async () => {
    try {
      const { file } = await loadAppraisalFile(listing.id, catalogue.carried);
      setChanges(await rubricChanges(rubric, now, file));
    } catch (cause) {
      setProblem(cause instanceof Error ? cause.message : String(cause));
    }
  };
  const move = () =>
    void judgeBy(listing, now).then((why) => {
      setProblem(why);
      if (why === undefined) setChanges(undefined);
    });
  return (
    <div class="field">
      <p>{words.newer(rubric.version, now.version)}</p>
      {changes === undefined ? (
        <button type="button" class="button" onClick={() => void look()}>
          {words.seeChanges}
        </button>
      ) : (
        <>
          <p class="field-hint">{changes.length === 0 ? words.noChanges : words.changesLead}</p>
          <ul class="ruled">
            {changes.map((c) => (
              <li key={`${c.of}/${c.id}/${c.kind}`}>
                {c.finding && <b>{words.foundThere} </b>}
                {c.sentence}
              </li>
            ))}
          </ul>
          <button type="button" class="button button-main" onClick={move}>
            {words.move(now.version)}
          </button>
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
