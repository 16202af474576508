import "../style/import.css";
import { useId, useState } from "preact/hooks";
import { readPrices, writePrices } from "../engine/engine.ts";
import type { Part, PriceImport, PriceRow, Range } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { Banner } from "../parts/page.tsx";
import { save } from "../parts/save.ts";
import { pricesTableWords as words } from "../words/prices.ts";
import { showRange } from "./amounts.tsx";
import { ImportProblems } from "./comparables-import-rows.tsx";
import { tableKinds } from "./comparables-import-source.tsx";
import { handOut } from "./hand-out.ts";
import { today } from "./today.ts";

interface Book {
  own: ReadonlyMap<string, Range>;
  /** Entries of the shop's own. */
  parts: Part[];
  currency: string;
}

const reason = (cause: unknown) => (cause instanceof Error ? cause.message : String(cause));

/** The price book out as a table and in again, seen before it is applied. */
export function PricesTable(book: Book) {
  const [said, setSaid] = useState<{ good?: string; problem?: string }>({});
  const [found, setFound] = useState<PriceImport | undefined>(undefined);
  const [busy, setBusy] = useState(false);
  const own = Object.fromEntries(book.own);
  /** One thing at a time; what goes wrong is said. */
  const work = async (task: () => Promise<{ good?: string; problem?: string }>) => {
    setBusy(true);
    setSaid({});
    try {
      setSaid(await task());
    } catch (cause) {
      setSaid({ problem: reason(cause) });
    }
    setBusy(false);
  };
  const write = async () => {
    const date = today();
    const { text } = await writePrices({ own, parts: book.parts, currency: book.currency, date });
    const name = words.file(date);
    // The mark at its head tells spreadsheets that it is UTF-8.
    handOut(name, new Blob(["\ufeff", text], { type: "text/csv" }));
    return { good: words.written(name) };
  };
  const read = async (file: File) => {
    setFound(undefined);
    setFound(await readPrices(file, { own, parts: book.parts, currency: book.currency }));
    return {};
  };
  const apply = async (rows: PriceRow[]) => {
    const problem = await save(
      words.label(rows.length),
      rows.map((row) => ({ doc: "book", path: `part/${row.id}`, value: { ...row.price } })),
    );
    if (problem !== undefined) return { problem };
    setFound(undefined);
    return { good: words.applied(rows.length) };
  };
  return (
    <Fold summary={words.title}>
      <p class="hint">{words.hint}</p>
      <div class="button-row">
        <button type="button" class="button" disabled={busy} onClick={() => void work(write)}>
          {words.write}
        </button>
        <FileButton busy={busy} choose={(file) => void work(() => read(file))} />
      </div>
      <p role="status">{said.good}</p>
      {said.problem && (
        <Banner tone="problem" urgent>
          {said.problem}
        </Banner>
      )}
      {found && (
        <Preview
          found={found}
          currency={book.currency}
          busy={busy}
          apply={(rows) => void work(() => apply(rows))}
          leave={() => setFound(undefined)}
        />
      )}
    </Fold>
  );
}

function FileButton(props: { busy: boolean; choose: (file: File) => void }) {
  const dom = useId();
  return (
    <div class="photo-input">
      <input
        id={dom}
        class="photo-file"
        type="file"
        accept={tableKinds}
        disabled={props.busy}
        onChange={(e) => {
          const chosen = e.currentTarget.files?.[0];
          e.currentTarget.value = "";
          if (chosen) props.choose(chosen);
        }}
      />
      <label class="button" for={dom}>
        {words.read}
      </label>
    </div>
  );
}

/** What a table would change, line by line, and what of it cannot be used. */
function Preview(props: {
  found: PriceImport;
  currency: string;
  busy: boolean;
  apply: (rows: PriceRow[]) => void;
  leave: () => void;
}) {
  const { found, currency } = props;
  const changes = found.rows.filter((row) => row.changes);
  return (
    <section class="block" aria-label={words.preview}>
      <h2 class="block-title">{words.preview}</h2>
      <p class="big-line figures" role="status">
        {words.count(found.rows.length, found.total)} {words.changes(changes.length)}{" "}
        {found.empty > 0 && words.empty(found.empty)}
      </p>
      <ul class="plain-list">
        {changes.map((row) => (
          <li key={row.id} class="import-row">
            <span dir="auto">
              <b>{row.title || row.id}</b>
              <span class="row-note figures">
                {row.own ? words.wasOwn : words.wasExample} {showRange(row.now, currency)} ·{" "}
                {words.line(row.line)}
              </span>
              {row.note && <span class="row-note">{row.note}</span>}
            </span>
            <span class="figures row-aside">{showRange(row.price, currency)}</span>
          </li>
        ))}
      </ul>
      <ImportProblems problems={found.problems} />
      <div class="button-row">
        <button
          type="button"
          class="button button-main"
          disabled={props.busy || changes.length === 0}
          onClick={() => props.apply(changes)}
        >
          {changes.length === 0 ? words.nothing : words.apply(changes.length)}
        </button>
        <button type="button" class="button" onClick={props.leave}>
          {words.leave}
        </button>
      </div>
    </section>
  );
}
