import "../style/hand-over.css";
import { useState } from "preact/hooks";
import { useListing } from "../parts/use-listing.ts";
import { handOverWords as words } from "../words/hand-over.ts";
import { LinkPanel } from "./link-panel.tsx";
import { NoListing } from "./no-listing.tsx";
import { fileName } from "./paper-name.ts";
import { PaperPage } from "./paper-page.tsx";
import { usePaper } from "./use-paper.ts";

/** The estimate exactly as the seller gets it, and the ways to hand it over. */
export function HandOverPreviewScreen({ id }: { id: string }) {
  const listing = useListing(id);
  const paper = usePaper(id, "estimate");
  const [linking, setLinking] = useState(false);
  if (listing?.empty) return <NoListing />;
  return (
    <PaperPage
      title={words.previewTitle}
      back={`/listing/${id}/hand-over`}
      backTitle={words.previewBack}
      paper={paper}
      name={fileName("estimate", listing?.text("date"))}
      action={
        <button
          type="button"
          class="button"
          aria-expanded={linking}
          onClick={() => {
            setLinking(!linking);
            window.scrollTo(0, 0);
          }}
        >
          {words.link}
        </button>
      }
    >
      {linking && listing && <LinkPanel listing={listing} paper={paper} />}
    </PaperPage>
  );
}
