import { useLocation } from "preact-iso";
import type { Check, Rubric } from "../generated/types.ts";
import { TextField } from "../parts/field.tsx";
import { Hazard } from "../parts/hazard.tsx";
import { Page } from "../parts/page.tsx";
import { type RubricDraft, useRubricDraft } from "../parts/use-rubric-draft.ts";
import { rubricWords as words } from "../words/rubric.ts";
import { blankCheck, withCheckAdded } from "./rubric-change.ts";
import { type OwnProps, WithOwn } from "./rubric-own.tsx";
import { RubricState } from "./rubric-state.tsx";

/** One rubric of the shop's own: its words, its points and what they weigh. */
export function RubricEditScreen({ id }: { id: string }) {
  return <WithOwn id={id} show={(own) => <Editor {...own} />} />;
}

function Editor({ catalogue, saved }: OwnProps) {
  const draft = useRubricDraft(catalogue, saved);
  const { rubric } = draft;
  const field = (name: "kind" | "about") => ({
    id: `rubric/${rubric.id}/${name}`,
    value: rubric[name],
    keep: (text: string) => {
      draft.set({ ...rubric, [name]: text.trim() });
      return undefined;
    },
  });
  return (
    <Page title={rubric.kind || saved.kind} back="/rubrics" backTitle={words.toRubrics}>
      <RubricState draft={draft} />
      <section class="block">
        <h2 class="block-title">{words.whole}</h2>
        <TextField {...field("kind")} label={words.kind} required most={60} />
        <TextField {...field("about")} label={words.aboutField} lines={5} most={1200} required />
        <TextField
          id={`rubric/${rubric.id}/cautions`}
          label={words.cautions}
          lines={6}
          most={20_000}
          value={rubric.cautions.join("\n")}
          keep={(text) => {
            draft.set({
              ...rubric,
              cautions: text
                .split("\n")
                .map((l) => l.trim())
                .filter(Boolean),
            });
            return undefined;
          }}
        />
        <div class="button-row">
          <a class="button" href={`/rubrics/${rubric.id}/weights`}>
            {words.byPairs}
          </a>
          <a class="button" href={`/rubrics/${rubric.id}/text`}>
            {words.asText}
          </a>
        </div>
      </section>
      <Sections draft={draft} />
      {draft.changed && (
        <button type="button" class="button button-away" onClick={draft.discard}>
          {words.discard}
        </button>
      )}
    </Page>
  );
}

function Sections({ draft }: { draft: RubricDraft }) {
  const { rubric } = draft;
  const { route } = useLocation();
  const add = (section: string) => {
    const check = blankCheck(rubric);
    draft.set(withCheckAdded(rubric, section, check));
    route(`/rubrics/${rubric.id}/check/${check.id}`);
  };
  return (
    <>
      {rubric.sections.map((s) => (
        <section key={s.id} class="block">
          <h2 class="block-title">{s.title}</h2>
          <p class="quiet figures">{sectionWeights(s.checks)}</p>
          <ul class="ways">
            {s.checks.map((c) => (
              <li key={c.id}>
                <a class="way" href={`/rubrics/${rubric.id}/check/${c.id}`}>
                  <b dir="auto">{c.title || words.newCheck}</b>
                  <span class="quiet figures">
                    <Hazard word={c.hazard} small />{" "}
                    {words.sectionWeights(c.weight.safety, c.weight.condition)}
                  </span>
                </a>
              </li>
            ))}
          </ul>
          <button type="button" class="button" onClick={() => add(s.id)}>
            {words.addCheck}
          </button>
        </section>
      ))}
    </>
  );
}

function sectionWeights(checks: Check[]): string {
  const sum = (of: keyof Rubric["sections"][number]["checks"][number]["weight"]) =>
    checks.reduce((all, c) => all + c.weight[of], 0);
  return words.sectionWeights(sum("safety"), sum("condition"));
}
