import { useState } from "preact/hooks";
import type { Catalogue, Import, ImportProblem } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { showMoney } from "../parts/money.ts";
import { comparablesWords } from "../words/comparables.ts";
import { importWords as words } from "../words/import.ts";
import { comparableAbout } from "./comparable-about.ts";

/** Rows that are shown before they are added. */
const first = 5;
/** How many remarks are listed before the rest is asked for. */
const shown = 50;

/** The first rows, in the words of the list they will stand in. */
export function ImportPreview(props: { found: Import; catalogue: Catalogue; currency: string }) {
  const { rows, lines } = props.found;
  if (rows.length === 0) return null;
  return (
    <section class="block">
      <h2 class="block-title">{words.preview}</h2>
      <ul class="plain-list">
        {rows.slice(0, first).map((row, i) => (
          <li key={row.id} class="import-row">
            <span dir="auto">
              <b>{row.title || comparablesWords.untitled}</b>
              <span class="row-note figures">
                {comparableAbout(row, props.catalogue)} · {words.line(lines[i] ?? 0)}
              </span>
              {row.seen && <span class="row-note">{row.seen}</span>}
              {row.note && <span class="row-note">{row.note}</span>}
            </span>
            <span class="figures row-aside">{showMoney(row.price, props.currency)}</span>
          </li>
        ))}
      </ul>
      {rows.length > first && <p class="hint figures">{words.previewMore(rows.length - first)}</p>}
    </section>
  );
}

/** Everything that was not read as it may have been meant, by line. */
export function ImportProblems({ problems }: { problems: ImportProblem[] }) {
  const [most, setMost] = useState(shown);
  if (problems.length === 0) return null;
  return (
    <Fold summary={words.problems(problems.length)} open>
      <ul class="ruled">
        {problems.slice(0, most).map((p, i) => (
          // Two remarks may read the same, and the list only grows at its end.
          <li key={i} dir="auto">
            <b class="figures">{words.problemAt(p.line, p.column)}</b>
            {p.text}
          </li>
        ))}
      </ul>
      {problems.length > most && (
        <button type="button" class="button" onClick={() => setMost(most + shown)}>
          {words.more(Math.min(shown, problems.length - most))}
        </button>
      )}
    </Fold>
  );
}
