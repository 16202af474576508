import "../style/money.css";
import "../style/import.css";
import { useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import { SelectField } from "../parts/field.tsx";
import { Banner, Page } from "../parts/page.tsx";
import { catalogueProblem, useCatalogue } from "../parts/use-catalogue.ts";
import { useShop } from "../parts/use-shop.ts";
import { comparablesWords } from "../words/comparables.ts";
import { importWords as words } from "../words/import.ts";
import { ImportColumns } from "./comparables-import-columns.tsx";
import { ImportHow } from "./comparables-import-how.tsx";
import { ImportPreview, ImportProblems } from "./comparables-import-rows.tsx";
import { ImportSource } from "./comparables-import-source.tsx";
import { foreignCurrency } from "./foreign-currency.ts";
import { useImport } from "./use-import.ts";

/** Comparables out of a table: choose it, see how it was read, add them. */
export function ComparablesImportScreen() {
  const catalogue = useCatalogue();
  const shop = useShop();
  const { query } = useLocation();
  const [chosen, setChosen] = useState<string | undefined>(undefined);
  const kind = chosen ?? query.kind ?? catalogue?.rubrics[0]?.id ?? "";
  const task = useImport(kind, catalogue?.own.find((o) => o.mark.id === kind)?.rubric);
  const frame = { title: words.title, back: `/comparables?kind=${kind}`, backTitle: words.back };
  if (!catalogue || !shop) {
    return (
      <Page {...frame}>
        {catalogueProblem.value ? (
          <Banner tone="problem" urgent>
            {catalogueProblem.value}
          </Banner>
        ) : (
          <p role="status">{comparablesWords.loading}</p>
        )}
      </Page>
    );
  }
  const { found, adding } = task;
  const rubric = catalogue.rubrics.find((r) => r.id === kind);
  const foreign = found && foreignCurrency(found.currency, shop.currency);
  const busy = adding !== undefined;
  const fresh = found ? found.rows.length - task.there : 0;
  const action =
    found && !task.done ? (
      <button type="button" class="button button-main" disabled={busy || fresh === 0} onClick={task.add}>
        {adding ? words.adding(adding.done, adding.all) : fresh === 0 ? words.none : words.add(fresh)}
      </button>
    ) : task.done ? (
      <a class="button button-main" href={frame.back}>
        {words.toComparables}
      </a>
    ) : undefined;
  return (
    <Page {...frame} actions={action}>
      {task.done ? (
        <Banner tone="note">
          <p>
            <b>{words.added(task.done.added)}</b> {task.done.there > 0 && words.wereThere(task.done.there)}
          </p>
          {task.done.added > 0 && <p>{words.undo}</p>}
        </Banner>
      ) : (
        <p class="hint">{words.about}</p>
      )}
      <SelectField
        id="import/kind"
        label={words.kind}
        value={kind}
        choices={catalogue.rubrics.map((r) => ({ id: r.id, title: r.kind }))}
        keep={(id) => {
          setChosen(id);
          return undefined;
        }}
      />
      <ImportSource busy={busy} read={task.read} />
      {task.problem && (
        <Banner tone="problem" urgent>
          {task.problem}
        </Banner>
      )}
      {task.reading && !found && <p role="status">{words.reading}</p>}
      {found && !task.done && (
        <>
          <section class="block" aria-label={words.from(task.name)}>
            <h2 class="block-title" dir="auto">
              {words.from(task.name)}
            </h2>
            <p class="big-line figures" role="status">
              {words.read(found.read, found.total)}{" "}
              {found.total > found.read && words.leftOut(found.total - found.read)}{" "}
              {task.there > 0 && (fresh === 0 ? words.allThere(found.rows.length) : words.there(task.there))}
            </p>
            {foreign && <Banner tone="problem">{words.currency(foreign, shop.currency)}</Banner>}
          </section>
          <ImportPreview found={found} catalogue={catalogue} currency={shop.currency} />
          <ImportHow found={found} rubric={rubric} busy={busy} choose={task.choose} />
          <ImportColumns key={task.name} found={found} choose={task.choose} />
          <ImportProblems problems={found.problems} />
        </>
      )}
    </Page>
  );
}
