import { exportAppraisal } from "../data/archive.ts";
import { Page } from "../parts/page.tsx";
import { useCatalogue } from "../parts/use-catalogue.ts";
import { useListing } from "../parts/use-listing.ts";
import { paperWords as words } from "../words/papers.ts";
import { pageWords } from "../words/parts.ts";
import { handOut } from "./hand-out.ts";
import { MakeButton } from "./make-button.tsx";
import { NoListing } from "./no-listing.tsx";

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
        {catalogue && (
          <MakeButton
            label={words.json}
            hint={words.jsonHint}
            make={async () => {
              const { name, blob } = await exportAppraisal(id, catalogue.carried);
              handOut(name, blob);
              return name;
            }}
          />
        )}
      </section>
    </Page>
  );
}

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
