import { useLocation } from "preact-iso";
import type { Check, Grades, Remedies } from "../generated/types.ts";
import { ChoiceField, NumberField, SelectField, TextField } from "../parts/field.tsx";
import { Page } from "../parts/page.tsx";
import { type RubricDraft, useRubricDraft } from "../parts/use-rubric-draft.ts";
import { hazardWords } from "../words/parts.ts";
import { rubricWords as words } from "../words/rubric.ts";
import { checkOf, withCheck, withCheckMoved, withoutCheck, withText } from "./rubric-change.ts";
import { type OwnProps, WithOwn } from "./rubric-own.tsx";
import { RubricState } from "./rubric-state.tsx";

/** One point of an own rubric. */
export function RubricCheckScreen({ id, check }: { id: string; check: string }) {
  return <WithOwn id={id} show={(own) => <CheckEditor key={check} {...own} check={check} />} />;
}

function CheckEditor(props: OwnProps & { check: string }) {
  const { catalogue, saved } = props;
  const draft = useRubricDraft(catalogue, saved);
  const { route } = useLocation();
  const back = `/rubrics/${saved.id}`;
  const check = checkOf(draft.rubric, props.check);
  if (!check) {
    return (
      <Page title={words.check} back={back} backTitle={words.toRubric}>
        <p>{words.gone}</p>
      </Page>
    );
  }
  const set = (change: Partial<Check>) => {
    draft.set(withCheck(draft.rubric, { ...check, ...change }));
    return undefined;
  };
  const key = (name: string) => `rubric/${saved.id}/${check.id}/${name}`;
  const weight = (of: "safety" | "condition", label: string) => (
    <NumberField
      id={key(of)}
      label={label}
      value={check.weight[of]}
      low={0}
      high={100}
      whole
      required
      keep={(n) => set({ weight: { ...check.weight, [of]: n ?? 0 } })}
    />
  );
  const limit = check.limit && catalogue.limits.find((l) => l.name === check.limit?.name);
  return (
    <Page title={check.title || words.newCheck} back={back} backTitle={words.toRubric}>
      <RubricState draft={draft} />
      <section class="block">
        <TextField
          id={key("title")}
          label={words.checkTitle}
          value={check.title}
          most={80}
          keep={(title) => set({ title: title.trim() })}
        />
        <ChoiceField
          id={key("hazard")}
          label={words.hazard}
          hint={words.hazardHint}
          value={check.hazard}
          choices={Object.entries(hazardWords).map(([id, title]) => ({ id, title }))}
          row
          keep={(hazard) => set({ hazard })}
        />
        <ChoiceField
          id={key("kind")}
          label={words.sort}
          value={check.kind}
          choices={Object.entries(words.sorts).map(([id, title]) => ({ id, title }))}
          row
          keep={(kind) => set({ kind })}
        />
        <div class="field-row">
          {weight("safety", words.safety)}
          {weight("condition", words.condition)}
          <NumberField
            id={key("minutes")}
            label={words.minutes}
            value={check.minutes}
            low={0.1}
            high={120}
            required
            keep={(n) => set({ minutes: n ?? check.minutes })}
          />
        </div>
        <TextField
          id={key("how")}
          label={words.how}
          value={check.how}
          lines={5}
          most={900}
          keep={(how) => set({ how: how.trim() })}
        />
        <TextField
          id={key("caution")}
          label={words.caution}
          hint={words.cautionHint}
          value={check.caution ?? ""}
          lines={3}
          most={400}
          keep={(text) => {
            draft.set(withCheck(draft.rubric, withText(check, "caution", text.trim())));
            return undefined;
          }}
        />
        {limit && <p class="quiet">{words.limitNote(limit.title)}</p>}
      </section>
      <GradeTexts check={check} grades={catalogue.grades} set={set} draft={draft} />
      <div class="button-row">
        <button
          type="button"
          class="button"
          onClick={() => draft.set(withCheckMoved(draft.rubric, check.id, -1))}
        >
          {words.moveUp}
        </button>
        <button
          type="button"
          class="button"
          onClick={() => draft.set(withCheckMoved(draft.rubric, check.id, 1))}
        >
          {words.moveDown}
        </button>
        <button
          type="button"
          class="button button-away"
          onClick={() => {
            draft.set(withoutCheck(draft.rubric, check.id));
            route(back);
          }}
        >
          {words.removeCheck}
        </button>
      </div>
    </Page>
  );
}

/** The five grades by their number, as the engine has them, best last. */
const gradeKeys: (keyof Grades)[] = ["failed", "bad", "worn", "sound", "as_new"];
const remedyKeys: (keyof Remedies)[] = ["failed", "bad", "worn"];

function GradeTexts(props: {
  check: Check;
  grades: string[];
  set: (change: Partial<Check>) => undefined;
  draft: RubricDraft;
}) {
  const { check, grades, set, draft } = props;
  const choices = [
    { id: "scrap", title: words.scrap },
    ...draft.rubric.remedies.map((r) => ({ id: r.id, title: r.title })),
  ];
  const rows = gradeKeys.map((key, n) => ({
    key,
    title: grades[n] ?? key,
    remedy: remedyKeys.find((r) => r === key),
  }));
  return (
    <section class="block">
      <h2 class="block-title">{words.grades}</h2>
      {rows.reverse().map(({ key, title, remedy }) => (
        <div key={key}>
          <TextField
            id={`rubric/${draft.rubric.id}/${check.id}/grade-${key}`}
            label={title}
            value={check.grades[key] ?? ""}
            lines={2}
            most={300}
            keep={(text) => {
              const clean = text.trim();
              // Two grades must always be told; the others may be left out.
              const must = key === "sound" || key === "failed";
              return set({
                grades: must ? { ...check.grades, [key]: clean } : withText(check.grades, key, clean),
              });
            }}
          />
          {remedy && (
            <SelectField
              id={`rubric/${draft.rubric.id}/${check.id}/remedy-${remedy}`}
              label={words.remedyFor(title)}
              value={check.remedies[remedy] ?? ""}
              choices={choices}
              unset={words.noRemedy}
              keep={(id) => set({ remedies: withText(check.remedies, remedy, id) })}
            />
          )}
        </div>
      ))}
    </section>
  );
}
