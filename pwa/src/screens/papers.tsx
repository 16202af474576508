import { useEffect, useState } from "preact/hooks";
import { plain } from "../charts/format.ts";
import { exportAppraisal } from "../data/archive.ts";
import { loadAppraisalFile } from "../data/file.ts";
import { localeFor } from "../data/hand-over.ts";
import { makeTables, writeCSV } from "../engine/engine.ts";
import type { SheetTable } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { Page } from "../parts/page.tsx";
import { type ShopCatalogue, useCatalogue } from "../parts/use-catalogue.ts";
import { useListing } from "../parts/use-listing.ts";
import { useWatch } from "../parts/use-watch.ts";
import { makeWorkbook, type Sheet } from "../sync/links.ts";
import { paperWords as words } from "../words/papers.ts";
import { pageWords } from "../words/parts.ts";
import { locale as spoken } from "../words/tongue.ts";
import { handOut } from "./hand-out.ts";
import { MakeButton } from "./make-button.tsx";
import { NoListing } from "./no-listing.tsx";
import { fileName } from "./paper-name.ts";

/** Papers and tables for oneself: nothing of these is meant for the seller. */
export function PapersScreen({ id }: { id: string }) {
  const listing = useListing(id);
  const catalogue = useCatalogue();
  if (listing?.empty) return <NoListing />;
  const base = `/listing/${id}`;
  return (
    <Page title={words.title} back={base} backTitle={words.back}>
      {listing ? (
        <p class="subject" dir="auto">
          {listing.title}
        </p>
      ) : (
        <p role="status">{pageWords.loading}</p>
      )}
      <p>{words.lead}</p>
      <section class="block" aria-label={words.papers}>
        <h2 class="block-title">{words.papers}</h2>
        <ul class="ways">
          {(["record", "jobs"] as const).map((kind) => (
            <Way key={kind} href={`${base}/papers/${kind}`} {...words.kinds[kind]} />
          ))}
          <Way href="/compare" {...words.comparison} />
          <Way href={`${base}/hand-over`} title={words.toSeller} note="" />
        </ul>
      </section>
      <section class="block" aria-label={words.tables}>
        <h2 class="block-title">{words.tables}</h2>
        <p class="hint">{words.tablesHint}</p>
        {catalogue && <Tables id={id} catalogue={catalogue} date={listing?.text("date")} />}
      </section>
    </Page>
  );
}

interface TablesProps {
  id: string;
  catalogue: ShopCatalogue;
  date: string | undefined;
}

/** Each table as CSV, all of them as a workbook, and everything as JSON. */
function Tables({ id, catalogue, date }: TablesProps) {
  const found = useWatch(`tables/${id}`, async () => {
    const { file } = await loadAppraisalFile(id, catalogue.carried);
    return { file };
  });
  const [tables, setTables] = useState<{ list: SheetTable[]; problem?: string } | undefined>(undefined);
  const file = found.value?.file;
  useEffect(() => {
    if (!file) return;
    let late = false;
    const locale = localeFor("", catalogue.locales, [spoken()])?.id ?? "";
    makeTables([file], { locale }).then(
      (list) => !late && setTables({ list }),
      (cause: unknown) =>
        !late && setTables({ list: [], problem: cause instanceof Error ? cause.message : String(cause) }),
    );
    return () => {
      late = true;
    };
  }, [file, catalogue]);
  const problem = found.problem ?? tables?.problem;
  const save = (name: string, blob: Blob) => {
    handOut(name, blob);
    return name;
  };
  const all = fileName("tables", date);
  return (
    <>
      {problem && (
        <p class="field-problem" role="alert">
          {problem}
        </p>
      )}
      {!tables && !problem && <p role="status">{words.making}</p>}
      {tables && tables.list.length > 0 && (
        <>
          <div>
            <Fold summary={words.csv} aside={plain(tables.list.length)}>
              {tables.list.map((table) => (
                <MakeButton
                  key={table.name}
                  label={words.csvOf(table.title)}
                  make={async () => {
                    const text = await writeCSV(table);
                    return save(`${all}-${table.name}.csv`, new Blob([text], { type: "text/csv" }));
                  }}
                />
              ))}
            </Fold>
          </div>
          <MakeButton
            label={words.xlsx}
            hint={words.xlsxHint}
            make={async () => save(`${all}.xlsx`, await makeWorkbook(tables.list.map(asSheet)))}
          />
        </>
      )}
      <MakeButton
        label={words.json}
        hint={words.jsonHint}
        make={async () => {
          const { name, blob } = await exportAppraisal(id, catalogue.carried);
          return save(name, blob);
        }}
      />
    </>
  );
}

/** A workbook names its sheets by their titles. */
const asSheet = ({ title, columns, rows }: SheetTable): Sheet => ({
  name: title,
  columns: columns.map((c) => ({ title: c.title, kind: c.kind as Sheet["columns"][number]["kind"] })),
  rows,
});

function Way({ href, title, note }: { href: string; title: string; note: string }) {
  return (
    <li>
      <a class="way" href={href}>
        <b>{title}</b>
        {note !== "" && <span class="quiet">{note}</span>}
      </a>
    </li>
  );
}
