import "../style/bench.css";
import { useState } from "preact/hooks";
import type { LimitDefinition } from "../generated/types.ts";
import { Banner, Page } from "../parts/page.tsx";
import { catalogueProblem, useCatalogue } from "../parts/use-catalogue.ts";
import { benchWords as words } from "../words/bench.ts";
import { pageWords } from "../words/parts.ts";
import { settingsWords } from "../words/settings.ts";
import { benchHref } from "./bench-address.ts";
import { hasEntries } from "./bench-entries.ts";
import { foundLimits } from "./bench-find.ts";
import { FindField } from "./find-field.tsx";
import { OpenedFold } from "./opened-fold.tsx";

/** Subjects left open, for the way back from a limit. */
const opened = new Set<string>();

/** All measured limits by subject, each a calculator of its own. */
export function BenchScreen() {
  const catalogue = useCatalogue();
  const [search, setSearch] = useState("");
  const found = catalogue ? foundLimits(catalogue, search) : [];
  const searching = search.trim() !== "";
  return (
    <Page title={words.title} back="/settings" backTitle={settingsWords.title}>
      <p class="quiet">{words.about}</p>
      {catalogueProblem.value && (
        <Banner tone="problem" urgent>
          {catalogueProblem.value}
        </Banner>
      )}
      {!catalogue && !catalogueProblem.value && <p role="status">{pageWords.loading}</p>}
      {catalogue && <FindField label={words.search} text={search} onText={setSearch} />}
      {searching && found.length === 0 && <p role="status">{words.none(search.trim())}</p>}
      {searching ? (
        found.map((s) => (
          <section key={s.id}>
            <h2 class="block-title">{s.title}</h2>
            <Limits limits={s.limits} />
          </section>
        ))
      ) : (
        <div>
          {found.map((s) => (
            <OpenedFold
              key={s.id}
              summary={s.title}
              aside={words.count(s.limits.length)}
              open={opened.has(s.id)}
              onOpen={(open) => void (open ? opened.add(s.id) : opened.delete(s.id))}
            >
              {() => <Limits limits={s.limits} />}
            </OpenedFold>
          ))}
        </div>
      )}
    </Page>
  );
}

function Limits({ limits }: { limits: LimitDefinition[] }) {
  return (
    <ul class="bench-limits">
      {limits.map((l) => (
        <li key={l.name}>
          <a class="bench-link" href={benchHref(l.name)}>
            <span class="bench-link-title">{l.title}</span>
            {hasEntries(l.name) && <span class="bench-link-note">{words.entered}</span>}
          </a>
        </li>
      ))}
    </ul>
  );
}
