import { useEffect, useState } from "preact/hooks";
import { weigh } from "../engine/editor.ts";
import type { Check, Weighed } from "../generated/types.ts";
import { ChoiceField, SelectField } from "../parts/field.tsx";
import { numberText } from "../parts/number.ts";
import { Page } from "../parts/page.tsx";
import { type RubricDraft, useRubricDraft } from "../parts/use-rubric-draft.ts";
import { rubricWords as words } from "../words/rubric.ts";
import { type OwnProps, WithOwn } from "./rubric-own.tsx";
import { comparable, matrix, type Score, spread, withWeights } from "./rubric-pairs.ts";
import { RubricState } from "./rubric-state.tsx";

/** More pairs than these nobody answers with care: seven points are 21. */
const mostCompared = 7;

/** Weights of a section's points out of comparisons two by two. */
export function RubricWeightsScreen({ id }: { id: string }) {
  return <WithOwn id={id} show={(own) => <Weights {...own} />} />;
}

function Weights({ catalogue, saved }: OwnProps) {
  const draft = useRubricDraft(catalogue, saved);
  const [section, setSection] = useState(saved.sections[0]?.id ?? "");
  const [score, setScore] = useState<Score>("safety");
  const checks = draft.rubric.sections.find((s) => s.id === section)?.checks ?? [];
  const compared = comparable(checks, score, mostCompared);
  const all = checks.filter((c) => c.weight[score] > 0).length;
  return (
    <Page title={words.pairsTitle} back={`/rubrics/${saved.id}`} backTitle={words.toRubric}>
      <p class="quiet">{words.pairsLead}</p>
      <SelectField
        id="pairs/section"
        label={words.pairsOf}
        value={section}
        choices={draft.rubric.sections.map((s) => ({ id: s.id, title: s.title }))}
        keep={(id) => {
          setSection(id);
          return undefined;
        }}
      />
      <ChoiceField
        id="pairs/score"
        label={words.pairsFor}
        value={score}
        choices={[
          { id: "safety", title: words.forSafety },
          { id: "condition", title: words.forCondition },
        ]}
        row
        keep={(id) => {
          setScore(id === "condition" ? "condition" : "safety");
          return undefined;
        }}
      />
      {all > mostCompared && <p class="quiet">{words.tooMany(mostCompared)}</p>}
      {compared.length < 2 ? (
        <p>{words.tooFew}</p>
      ) : (
        <Pairs
          key={`${section}/${score}/${compared.map((c) => c.id).join()}`}
          draft={draft}
          checks={compared}
          score={score}
        />
      )}
      <RubricState draft={draft} />
    </Page>
  );
}

function Pairs({ draft, checks, score }: { draft: RubricDraft; checks: Check[]; score: Score }) {
  // The order of the list must not move under the fingers while weights change.
  const [order] = useState(() => checks.map((c) => c.id));
  const byId = new Map(checks.map((c) => [c.id, c]));
  const shown = order.flatMap((id) => byId.get(id) ?? []);
  const [answers, setAnswers] = useState<ReadonlyMap<string, number>>(new Map());
  const [weighed, setWeighed] = useState<Weighed | undefined>(undefined);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  useEffect(() => {
    let late = false;
    weigh(matrix(order, answers)).then(
      (w) => !late && setWeighed(w),
      (cause: unknown) => !late && setProblem(cause instanceof Error ? cause.message : String(cause)),
    );
    return () => {
      late = true;
    };
  }, [answers, order]);
  const total = shown.reduce((sum, c) => sum + c.weight[score], 0);
  const next = weighed ? spread(total, weighed.weights) : [];
  const use = () => {
    const weights = new Map(shown.map((c, i) => [c.id, next[i] ?? c.weight[score]]));
    draft.set(withWeights(draft.rubric, score, weights));
  };
  const pairs = shown.flatMap((a, i) => shown.slice(i + 1).map((b) => ({ a, b })));
  return (
    <section class="block">
      {pairs.map(({ a, b }) => (
        <SelectField
          key={`${a.id}/${b.id}`}
          id={`pairs/${a.id}/${b.id}`}
          label={words.pair(a.title, b.title)}
          value={String(answers.get(`${a.id}/${b.id}`) ?? 1)}
          choices={words.answers.map(([id, title]) => ({ id, title }))}
          keep={(id) => {
            setAnswers(new Map(answers).set(`${a.id}/${b.id}`, Number(id)));
            return undefined;
          }}
        />
      ))}
      {problem && (
        <p class="field-problem" role="alert">
          {problem}
        </p>
      )}
      {weighed && (
        <div aria-live="polite">
          <p class="figures">
            {words.ratio(numberText(round(weighed.ratio, 3)), numberText(weighed.accept))}
          </p>
          {weighed.ratio > weighed.accept && (
            <p class="field-problem">
              {words.contradict} {worstOf(weighed, shown)}
            </p>
          )}
          <ul class="ruled">
            {shown.map((c, i) => (
              <li key={c.id}>
                {c.title}:{" "}
                <b class="figures">{words.weightOf(c.weight[score], next[i] ?? c.weight[score])}</b>
              </li>
            ))}
          </ul>
          <button type="button" class="button button-main" onClick={use}>
            {words.useWeights}
          </button>
        </div>
      )}
    </section>
  );
}

const round = (x: number, places: number) => Math.round(x * 10 ** places) / 10 ** places;

function worstOf(weighed: Weighed, checks: Check[]): string {
  const [i, j] = weighed.worst;
  const [a, b] = [checks[i], checks[j]];
  return a && b ? words.worst(a.title, b.title) : "";
}
