import { useState } from "preact/hooks";
import type { PhotoCopy } from "../data/photo-copy.ts";
import { renderPdf, uncovered } from "../engine/paper.ts";
import type { Document } from "../generated/types.ts";
import { handOverWords as words } from "../words/hand-over.ts";
import { bytesText } from "./bytes-text.ts";
import { handOut } from "./hand-out.ts";

interface Pdf {
  /** What it was made of: another document needs another PDF. */
  of: Document;
  file: File;
  /** Characters it could not draw. */
  lacking: string;
}

type At = { at: "idle" } | { at: "making" } | { at: "ready"; pdf: Pdf } | { at: "failed"; problem: string };

export interface PdfMaker {
  state: At;
  make: () => void;
}

/** Makes the PDF of a document when asked to; a document that changed since is made anew. */
export function usePdf(props: {
  document: Document | undefined;
  page: "letter" | "a4";
  copies: ReadonlyMap<string, PhotoCopy>;
  name: string;
}): PdfMaker {
  const { document, page, copies, name } = props;
  const [state, setState] = useState<At>({ at: "idle" });
  const make = async () => {
    if (!document) return;
    setState({ at: "making" });
    try {
      // Buffers are handed over for good, and the copies are shown and sent from here on.
      const photos = new Map([...copies].map(([key, copy]) => [key, copy.data.slice(0)]));
      const data = await renderPdf(document, page, photos);
      const lacking = (await uncovered(document)).join(" ");
      const file = new File([data], name, { type: "application/pdf" });
      setState({ at: "ready", pdf: { of: document, file, lacking } });
    } catch (cause) {
      setState({ at: "failed", problem: cause instanceof Error ? cause.message : String(cause) });
    }
  };
  const stale = state.at === "ready" && state.pdf.of !== document;
  return { state: stale ? { at: "idle" } : state, make: () => void make() };
}

/** Whether this device's share sheet takes a PDF. */
function canShare(file: File): boolean {
  try {
    return typeof navigator.canShare === "function" && navigator.canShare({ files: [file] });
  } catch {
    return false;
  }
}

/** The PDF that was made: how large, what it lacks, to hand on or to save. */
export function PdfReady({ maker }: { maker: PdfMaker }) {
  const { state } = maker;
  const [said, setSaid] = useState<string | undefined>(undefined);
  if (state.at === "idle") return null;
  if (state.at === "making") return <p role="status">{words.pdfMaking}</p>;
  if (state.at === "failed") {
    return (
      <p class="field-problem" role="alert">
        {state.problem}
      </p>
    );
  }
  const { file, lacking } = state.pdf;
  const share = async () => {
    setSaid(undefined);
    try {
      await navigator.share({ files: [file], title: file.name });
      setSaid(words.shared);
    } catch (cause) {
      // Closing the share sheet is a choice, not an error.
      if (!(cause instanceof DOMException && cause.name === "AbortError")) setSaid(words.notShared);
    }
  };
  const save = () => {
    handOut(file.name, file);
    setSaid(words.saved(file.name));
  };
  return (
    <div class="banner banner-note">
      <p role="status">{words.pdfReady(bytesText(file.size))}</p>
      {lacking !== "" && <p class="field-problem">{words.uncovered(lacking)}</p>}
      <div class="button-row">
        {canShare(file) && (
          <button type="button" class="button button-main" onClick={() => void share()}>
            {words.share}
          </button>
        )}
        <button type="button" class={canShare(file) ? "button" : "button button-main"} onClick={save}>
          {words.save}
        </button>
      </div>
      <p role="status">{said}</p>
    </div>
  );
}
