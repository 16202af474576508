import { useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import type { Catalogue, LimitDefinition } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { Banner, Page } from "../parts/page.tsx";
import { catalogueProblem, useCatalogue } from "../parts/use-catalogue.ts";
import { useShop } from "../parts/use-shop.ts";
import { limitWords, benchWords as words } from "../words/bench.ts";
import { pageWords } from "../words/parts.ts";
import { backOf } from "./bench-address.ts";
import { benchEntry, benchMeasuring, fillBench, hasEntries } from "./bench-entries.ts";
import { LimitFields, MakerField } from "./limit-fields.tsx";
import { LimitPanel } from "./limit-panel.tsx";
import { useBenchQuery } from "./use-bench-query.ts";
import { givenTo, useLimit } from "./use-limit.ts";

/** One measured limit as a calculator. */
export function BenchLimitScreen({ name }: { name: string }) {
  const catalogue = useCatalogue();
  const shop = useShop();
  const from = backOf(useLocation().query);
  const back = { back: from ?? "/bench", backTitle: from ? words.backToCheck : words.title };
  const definition = catalogue?.limits.find((l) => l.name === name);
  if (!catalogue || !shop || !definition) {
    const known = catalogue === undefined || shop === undefined;
    return (
      <Page title={words.title} {...back}>
        {catalogueProblem.value ? (
          <Banner tone="problem" urgent>
            {catalogueProblem.value}
          </Banner>
        ) : (
          <p role="status">{known ? pageWords.loading : words.unknown}</p>
        )}
      </Page>
    );
  }
  return (
    <Page key={name} title={definition.title} {...back}>
      <Calculator definition={definition} catalogue={catalogue} metric={shop.units === "metric"} />
    </Page>
  );
}

function Calculator(props: { definition: LimitDefinition; catalogue: Catalogue; metric: boolean }) {
  const { definition, catalogue } = props;
  const { name, caution } = definition;
  const problem = useBenchQuery(definition);
  const entry = benchEntry(name);
  const unread = entry.unread.length > 0;
  const view = useLimit(name, unread ? undefined : givenTo(definition, {}, entry));
  // A choice that is taken when none is made shows what is taken: it is not empty.
  const first = definition.quantities.filter(
    (q) => q.either || (q.words && q.default) || !(q.optional || q.default),
  );
  const rest = definition.quantities.filter((q) => !first.includes(q));
  const fields = {
    id: `bench/${name}/${entry.round}`,
    definition,
    metric: props.metric,
    measured: entry,
    measuring: benchMeasuring(name, entry.round),
    view,
  };
  const inRest = rest.some(
    (q) =>
      entry.quantities[q.name] !== undefined ||
      entry.words[q.name] !== undefined ||
      view.field === q.name ||
      entry.unread.includes(q.name),
  );
  const numbers = definition.quantities.some((q) => q.dimension !== "word" && q.dimension !== "number");
  return (
    <>
      {caution && <ReadFirst text={caution} />}
      {problem && <Banner tone="problem">{problem}</Banner>}
      <section key={entry.round} class="block" aria-label={words.enter}>
        {numbers && <p class="field-hint">{words.entry}</p>}
        <LimitFields {...fields} inputs={first} />
        {rest.length > 0 && (
          <div>
            <Fold summary={words.more} open={inRest || first.length === 0}>
              <LimitFields {...fields} inputs={rest} folded />
            </Fold>
            <MakerField {...fields} catalogue={catalogue} />
          </div>
        )}
        {rest.length === 0 && <MakerField {...fields} catalogue={catalogue} />}
      </section>
      <h2 class="seen-by-reader">{limitWords.result}</h2>
      <LimitPanel
        view={view}
        named={view.field !== undefined}
        said={caution}
        {...(unread ? { wait: limitWords.unread } : {})}
      />
      {hasEntries(name) && (
        <button type="button" class="button button-plain" onClick={() => fillBench(name)}>
          {words.clear}
        </button>
      )}
    </>
  );
}

/** Cautions folded away in this visit, by their text. */
const folded = new Set<string>();

/** What must be read before the figures; open until it was folded away. */
function ReadFirst({ text }: { text: string }) {
  const [open] = useState(!folded.has(text));
  return (
    <details
      class="read-first"
      open={open}
      onToggle={(e) => void (e.currentTarget.open ? folded.delete(text) : folded.add(text))}
    >
      <summary class="fold-row">
        <span class="fold-title">{words.readFirst}</span>
      </summary>
      <p>{text}</p>
    </details>
  );
}
