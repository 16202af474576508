import { useEffect, useId, useRef, useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import { readRubric, writeRubric } from "../engine/editor.ts";
import type { RubricRead } from "../generated/types.ts";
import { Labelled } from "../parts/field.tsx";
import { Page } from "../parts/page.tsx";
import { takenIds, useRubricDraft } from "../parts/use-rubric-draft.ts";
import { rubricWords as words } from "../words/rubric.ts";
import { type OwnProps, WithOwn } from "./rubric-own.tsx";
import { RubricProblems } from "./rubric-problems.tsx";

/** An own rubric as a file, checked as it is typed. */
export function RubricTextScreen({ id }: { id: string }) {
  return <WithOwn id={id} show={(own) => <TextEditor {...own} />} />;
}

/** Texts that were not right yet, by rubric, so that a screen left and reopened shows them again. */
const unfinished = new Map<string, string>();

function TextEditor({ catalogue, saved }: OwnProps) {
  const draft = useRubricDraft(catalogue, saved);
  const { route } = useLocation();
  const dom = useId();
  const [text, setText] = useState<string | undefined>(unfinished.get(saved.id));
  const [read, setRead] = useState<RubricRead | undefined>(undefined);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const first = useRef(draft.rubric);
  const say = (cause: unknown) => setProblem(cause instanceof Error ? cause.message : String(cause));
  useEffect(() => {
    if (text === undefined) writeRubric(first.current).then(setText, say);
  }, [text]);
  useEffect(() => {
    if (text === undefined) return;
    let late = false;
    const timer = setTimeout(() => {
      readRubric(text, {
        name: saved.kind,
        parts: catalogue.parts,
        taken: takenIds(catalogue, saved.id),
      }).then(
        (found) => {
          if (late) return;
          setRead(found);
          setProblem(undefined);
        },
        (cause: unknown) => !late && say(cause),
      );
    }, 300);
    return () => {
      late = true;
      clearTimeout(timer);
    };
  }, [text, catalogue, saved]);
  const fine = read?.rubric && read.problems.length === 0 && read.rubric.id === saved.id;
  const take = () => {
    if (!read?.rubric) return;
    draft.set(read.rubric);
    unfinished.delete(saved.id);
    route(`/rubrics/${saved.id}`);
  };
  return (
    <Page
      title={words.textTitle}
      back={`/rubrics/${saved.id}`}
      backTitle={words.toRubric}
      actions={
        <button type="button" class="button button-main" disabled={!fine} onClick={take}>
          {words.takeText}
        </button>
      }
    >
      <p class="quiet">{words.textLead}</p>
      {(text === undefined || read === undefined) && !problem && <p role="status">{words.waiting}</p>}
      {problem && (
        <p class="field-problem" role="alert">
          {problem}
        </p>
      )}
      {read && read.problems.length > 0 && <RubricProblems problems={read.problems} />}
      {read?.rubric && read.rubric.id !== saved.id && <p class="field-problem">{words.otherId(saved.id)}</p>}
      {fine && <p role="status">{words.fine}</p>}
      {text !== undefined && (
        <Labelled label={words.textTitle} for={dom}>
          <textarea
            id={dom}
            class="rubric-text"
            rows={24}
            spellcheck={false}
            value={text}
            onInput={(e) => {
              unfinished.set(saved.id, e.currentTarget.value);
              setText(e.currentTarget.value);
            }}
          />
        </Labelled>
      )}
    </Page>
  );
}
