import { useId, useState } from "preact/hooks";
import { type ArchiveReport, applyArchive, exportArchive, readArchive } from "../data/archive.ts";
import { Banner, Page } from "../parts/page.tsx";
import { proofWords } from "../words/photo.ts";
import { backupWords as words } from "../words/settings.ts";
import { locale as spoken } from "../words/tongue.ts";
import { bytesText } from "./bytes-text.ts";
import { handOut } from "./hand-out.ts";
import { PhotoCheckAll } from "./photo-check.tsx";

/** Everything out as one file, and in again after its report was read. */
export function BackupScreen() {
  return (
    <Page title={words.title} back="/settings" backTitle={words.back}>
      <ExportAll />
      <ImportAll />
      <PhotoCheckAll />
    </Page>
  );
}

const reasonOf = (cause: unknown) => (cause instanceof Error ? cause.message : String(cause));

function ExportAll() {
  const [busy, setBusy] = useState(false);
  const [said, setSaid] = useState<{ good?: string; problem?: string }>({});
  const write = async () => {
    setBusy(true);
    setSaid({});
    try {
      const { name, blob, left } = await exportArchive();
      handOut(name, blob);
      setSaid({
        good: words.exported(name, bytesText(blob.size)),
        ...(left > 0 ? { problem: proofWords.left(left) } : {}),
      });
    } catch (cause) {
      setSaid({ problem: reasonOf(cause) });
    }
    setBusy(false);
  };
  return (
    <section class="block" aria-label={words.exportTitle}>
      <h2 class="block-title">{words.exportTitle}</h2>
      <p>{words.exportLead}</p>
      <button type="button" class="button button-main" disabled={busy} onClick={() => void write()}>
        {busy ? words.exporting : words.exportGo}
      </button>
      {said.good && <p role="status">{said.good}</p>}
      {said.problem && (
        <Banner tone="problem" urgent>
          {said.problem}
        </Banner>
      )}
    </section>
  );
}

type ImportState =
  | { at: "idle" }
  | { at: "reading" }
  | { at: "report"; report: ArchiveReport }
  | { at: "applying"; report: ArchiveReport }
  | { at: "done" }
  | { at: "failed"; problem: string };

function ImportAll() {
  const dom = useId();
  const [state, setState] = useState<ImportState>({ at: "idle" });
  const read = (file: File) => {
    setState({ at: "reading" });
    readArchive(file).then(
      (report) => setState({ at: "report", report }),
      (cause: unknown) => setState({ at: "failed", problem: reasonOf(cause) }),
    );
  };
  const apply = (report: ArchiveReport) => {
    setState({ at: "applying", report });
    applyArchive(report).then(
      () => setState({ at: "done" }),
      (cause: unknown) => setState({ at: "failed", problem: reasonOf(cause) }),
    );
  };
  return (
    <section class="block" aria-label={words.importTitle}>
      <h2 class="block-title">{words.importTitle}</h2>
      <p>{words.importLead}</p>
      <div class="photo-input">
        <input
          id={dom}
          class="photo-file"
          type="file"
          accept=".zip,application/zip"
          disabled={state.at === "reading" || state.at === "applying"}
          onChange={(e) => {
            const file = e.currentTarget.files?.[0];
            e.currentTarget.value = "";
            if (file) read(file);
          }}
        />
        <label class="button" for={dom}>
          {words.importGo}
        </label>
      </div>
      {state.at === "reading" && <p role="status">{words.reading}</p>}
      {state.at === "done" && <p role="status">{words.done}</p>}
      {state.at === "failed" && (
        <Banner tone="problem" urgent>
          {state.problem}
        </Banner>
      )}
      {(state.at === "report" || state.at === "applying") && (
        <Report
          report={state.report}
          busy={state.at === "applying"}
          apply={() => apply(state.report)}
          leave={() => setState({ at: "idle" })}
        />
      )}
    </section>
  );
}

function Report(props: { report: ArchiveReport; busy: boolean; apply: () => void; leave: () => void }) {
  const { made, rows, photos, refused, nothing } = props.report;
  const lines: [string, number][] = [
    [words.added, rows.added],
    [words.newer, rows.newer],
    [words.older, rows.older],
    [words.same, rows.same],
    [words.photosAdded, photos.added],
    [words.photosSame, photos.same],
  ];
  const when = made === "" ? undefined : new Date(made);
  return (
    <div class="banner banner-note" role="status">
      <h3>{words.report}</h3>
      {when && !Number.isNaN(when.getTime()) && (
        <p>{words.made(when.toLocaleString(spoken(), { dateStyle: "medium", timeStyle: "short" }))}</p>
      )}
      <dl class="pairs figures">
        {lines.map(([title, n]) => (
          <div key={title} class="pair">
            <dt>{title}</dt>
            <dd>{n}</dd>
          </div>
        ))}
      </dl>
      {refused.length > 0 && (
        <>
          <p class="field-problem">{words.refused(refused.length)}</p>
          <ul class="ruled">
            {refused.slice(0, 50).map((r) => (
              <li key={`${r.where} ${r.reason}`}>
                <span class="stamped">{r.where}</span> {r.reason}
              </li>
            ))}
          </ul>
        </>
      )}
      {nothing && <p>{words.nothing}</p>}
      <div class="button-row">
        <button type="button" class="button" disabled={props.busy} onClick={props.leave}>
          {words.cancel}
        </button>
        <button
          type="button"
          class="button button-main"
          disabled={props.busy || nothing}
          onClick={props.apply}
        >
          {props.busy ? words.applying : words.apply}
        </button>
      </div>
    </div>
  );
}
