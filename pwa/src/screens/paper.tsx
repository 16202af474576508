import { Page } from "../parts/page.tsx";
import { useListing } from "../parts/use-listing.ts";
import { frameWords } from "../words/frame.ts";
import { paperWords as words } from "../words/papers.ts";
import { NoListing } from "./no-listing.tsx";
import { fileName } from "./paper-name.ts";
import { PaperPage } from "./paper-page.tsx";
import { usePaper } from "./use-paper.ts";

/** One paper for oneself. */
export function PaperScreen({ id, kind }: { id: string; kind: string }) {
  const listing = useListing(id);
  if (listing?.empty) return <NoListing />;
  if (kind !== "record" && kind !== "jobs") {
    return (
      <Page title={frameWords.notFound} back={`/listing/${id}/papers`} backTitle={words.backToAll}>
        <p>{frameWords.notFoundWhy}</p>
      </Page>
    );
  }
  return <OnePaper key={kind} id={id} kind={kind} date={listing?.text("date")} />;
}

function OnePaper({ id, kind, date }: { id: string; kind: "record" | "jobs"; date: string | undefined }) {
  return (
    <PaperPage
      title={words.kinds[kind].title}
      back={`/listing/${id}/papers`}
      backTitle={words.backToAll}
      paper={usePaper(id, kind)}
      name={fileName(kind, date)}
    />
  );
}
