import type { ComponentChildren } from "preact";
import { DocumentView } from "../parts/document-view.tsx";
import { Banner, Page } from "../parts/page.tsx";
import { usePrintPage } from "../parts/print-page.ts";
import { handOverWords as words } from "../words/hand-over.ts";
import { PdfReady, usePdf } from "./paper-pdf.tsx";
import { type Paper, useShown } from "./use-paper.ts";

/** A paper as it will be, with what can be done with it: PDF, print, and what the screen adds. */
export function PaperPage(props: {
  title: string;
  back: string;
  backTitle: string;
  paper: Paper;
  /** What the file is called, without its ending; nothing private. */
  name: string;
  /** Another way of handing it over. */
  action?: ComponentChildren;
  children?: ComponentChildren;
}) {
  const { paper } = props;
  const photo = useShown(paper.copies);
  const maker = usePdf({ ...paper, document: paper.document, name: `${props.name}.pdf` });
  usePrintPage(paper.document, paper.page);
  const ready = paper.document !== undefined && paper.toCopy === 0;
  const making = maker.state.at === "making";
  return (
    <Page
      title={props.title}
      back={props.back}
      backTitle={props.backTitle}
      actions={
        paper.document && (
          <>
            {props.action}
            <button type="button" class="button" disabled={!ready} onClick={() => window.print()}>
              {words.print}
            </button>
            <button
              type="button"
              class="button button-main"
              disabled={!ready || making}
              onClick={() => {
                maker.make();
                window.scrollTo(0, 0);
              }}
            >
              {making ? words.pdfMaking : words.pdfMake}
            </button>
          </>
        )
      }
    >
      {paper.problem && (
        <Banner tone="problem" urgent>
          {paper.problem}
        </Banner>
      )}
      {!paper.document && !paper.problem && <p role="status">{words.making}</p>}
      {paper.document && (
        <>
          <PdfReady maker={maker} />
          {props.children}
          {paper.toCopy > 0 && <p role="status">{words.copying(paper.toCopy)}</p>}
          <DocumentView document={paper.document} photo={photo} />
        </>
      )}
    </Page>
  );
}
