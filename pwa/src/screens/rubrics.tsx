import { useId, useState } from "preact/hooks";
import { ownChange } from "../data/rubric.ts";
import { readRubric, writeRubric } from "../engine/editor.ts";
import type { Rubric, RubricRead } from "../generated/types.ts";
import { Banner, Page } from "../parts/page.tsx";
import { save } from "../parts/save.ts";
import { catalogueProblem, type ShopCatalogue, useCatalogue } from "../parts/use-catalogue.ts";
import { publishRubric } from "../parts/use-rubric-draft.ts";
import { pageWords } from "../words/parts.ts";
import { rubricWords as words } from "../words/rubric.ts";
import { handOut } from "./hand-out.ts";
import { freeId } from "./rubric-id.ts";
import { RubricProblems } from "./rubric-problems.tsx";

/** All kinds of equipment, and the shop's own ones. */
export function RubricsScreen() {
  const catalogue = useCatalogue();
  if (!catalogue) {
    return (
      <Page title={words.title} back="/settings" backTitle={pageWords.back}>
        <p role="status">{catalogueProblem.value ?? pageWords.loading}</p>
      </Page>
    );
  }
  return (
    <Page title={words.title} back="/settings" backTitle={pageWords.back}>
      <p class="quiet">{words.lead}</p>
      <section class="block">
        <h2 class="block-title">{words.own}</h2>
        {catalogue.own.length === 0 && <p>{words.noOwn}</p>}
        {catalogue.own.map((own) => (
          <RubricRow key={own.mark.id} rubric={own.rubric} catalogue={catalogue} own />
        ))}
        <RubricFile catalogue={catalogue} />
      </section>
      <section class="block">
        <h2 class="block-title">{words.carried}</h2>
        {catalogue.carried.rubrics.map((rubric) => (
          <RubricRow key={rubric.id} rubric={rubric} catalogue={catalogue} />
        ))}
      </section>
    </Page>
  );
}

function RubricRow(props: { rubric: Rubric; catalogue: ShopCatalogue; own?: boolean }) {
  const { rubric, catalogue } = props;
  const [said, setSaid] = useState<string | undefined>(undefined);
  const checks = rubric.sections.flatMap((s) => s.checks);
  const minutes = Math.round(checks.reduce((sum, c) => sum + c.minutes, 0));
  const copy = () => {
    const own: Rubric = {
      ...rubric,
      id: freeId(rubric.id, catalogue),
      kind: words.copyKind(rubric.kind).slice(0, 60),
    };
    void publishRubric(own, 1).then((why) => setSaid(why ?? words.taken(own.kind, 1)));
  };
  const write = async () => {
    try {
      const name = `${rubric.id}.yaml`;
      handOut(name, new Blob([await writeRubric(rubric)], { type: "application/yaml" }));
      setSaid(words.saved(name));
    } catch (cause) {
      setSaid(cause instanceof Error ? cause.message : String(cause));
    }
  };
  const remove = () =>
    void save(words.removeLabel(rubric.kind), [ownChange(rubric.id, null)]).then(
      (why) => why && setSaid(why),
    );
  return (
    <div class="field">
      <p>
        <b dir="auto">{rubric.kind}</b>
        <span class="row-note figures">{words.about(checks.length, minutes, rubric.version)}</span>
      </p>
      <div class="button-row">
        {props.own ? (
          <a class="button" href={`/rubrics/${rubric.id}`}>
            {words.edit}
          </a>
        ) : (
          <button type="button" class="button" onClick={copy}>
            {words.copy}
          </button>
        )}
        <button type="button" class="button" onClick={() => void write()}>
          {words.save}
        </button>
        {props.own && (
          <button type="button" class="button button-away" onClick={remove} title={words.removeHint}>
            {words.remove}
          </button>
        )}
      </div>
      {said && <p role="status">{said}</p>}
    </div>
  );
}

/** A rubric out of a file: read, held to the rules, and taken only when it keeps them. */
function RubricFile({ catalogue }: { catalogue: ShopCatalogue }) {
  const dom = useId();
  const [name, setName] = useState("");
  const [read, setRead] = useState<RubricRead | undefined>(undefined);
  const [said, setSaid] = useState<string | undefined>(undefined);
  const open = async (file: File) => {
    setName(file.name);
    setRead(undefined);
    setSaid(words.reading);
    try {
      const taken = catalogue.carried.rubrics.map((r) => r.id);
      setRead(await readRubric(await file.text(), { name: file.name, parts: catalogue.parts, taken }));
      setSaid(undefined);
    } catch (cause) {
      setSaid(cause instanceof Error ? cause.message : String(cause));
    }
  };
  const rubric = read && read.problems.length === 0 ? (read.rubric ?? undefined) : undefined;
  const before = catalogue.own.find((o) => o.mark.id === rubric?.id);
  const version = (before?.mark.version ?? 0) + 1;
  const take = () => {
    if (!rubric) return;
    void publishRubric(rubric, version).then((why) => {
      setSaid(why ?? words.taken(rubric.kind, version));
      if (why === undefined) setRead(undefined);
    });
  };
  return (
    <div class="field">
      <div class="photo-input">
        <input
          id={dom}
          type="file"
          class="photo-file"
          accept=".yaml,.yml,application/yaml,text/yaml,text/plain"
          onChange={(e) => {
            const file = e.currentTarget.files?.[0];
            e.currentTarget.value = "";
            if (file) void open(file);
          }}
        />
        <label class="button" for={dom}>
          {words.read}
        </label>
      </div>
      <p class="field-hint">{words.readHint}</p>
      {said && <p role="status">{said}</p>}
      {read && read.problems.length > 0 && (
        <>
          <Banner tone="problem" urgent>
            {words.refused(name)}
          </Banner>
          <RubricProblems problems={read.problems} />
        </>
      )}
      {rubric && (
        <>
          {before && <p>{words.replaces(before.rubric.kind)}</p>}
          <button type="button" class="button button-main" onClick={take}>
            {words.takeNew(version)}
          </button>
        </>
      )}
    </div>
  );
}
