import { doc, type ListingSummary, listings } from "../data/read.ts";
import { Fold } from "../parts/fold.tsx";
import { Banner, Page } from "../parts/page.tsx";
import { type ShopCatalogue, useCatalogue } from "../parts/use-catalogue.ts";
import { useShop } from "../parts/use-shop.ts";
import { useWatch } from "../parts/use-watch.ts";
import { listingsWords as words } from "../words/listings.ts";
import { pageWords } from "../words/parts.ts";
import { ListingCard } from "./listing-card.tsx";
import { isDemo } from "./listing-title.ts";

/** Everything under appraisal, newest change first. */
export function ListingsScreen() {
  const { value, problem } = useWatch("listings", () => listings({ deleted: true }));
  const catalogue = useCatalogue();
  const shop = useShop();
  const kept = value?.filter((l) => !l.deleted || l.changedAfterDelete);
  const deleted = value?.filter((l) => l.deleted && !l.changedAfterDelete) ?? [];
  const currency = shop?.currency ?? "USD";
  return (
    <Page
      title={words.title}
      actions={
        <>
          {kept && kept.length > 1 && (
            <a class="button" href="/compare">
              {words.compare}
            </a>
          )}
          <a class="button button-main" href="/new">
            {words.add}
          </a>
        </>
      }
    >
      {problem && (
        <Banner tone="problem" urgent>
          {words.failed} {problem}
        </Banner>
      )}
      {!kept && !problem && <p role="status">{pageWords.loading}</p>}
      {kept && <Purpose listings={kept} />}
      {kept?.length === 0 && <Empty />}
      {kept && kept.length > 0 && <Cards listings={kept} catalogue={catalogue} currency={currency} />}
      {deleted.length > 0 && (
        <Fold summary={words.deletedTitle(deleted.length)}>
          <Cards listings={deleted} catalogue={catalogue} currency={currency} />
        </Fold>
      )}
    </Page>
  );
}

/** What the app is for, until there is a listing of one's own. */
function Purpose({ listings }: { listings: ListingSummary[] }) {
  const ids = listings.map((l) => l.doc).join(" ");
  const own = useWatch(`own/${ids}`, async () => {
    for (const listing of listings) {
      const note = (await doc(listing.doc)).values.get("note");
      if (!isDemo(typeof note === "string" ? note : "")) return true;
    }
    return false;
  }).value;
  return own === false ? <p>{words.what}</p> : null;
}

function Cards(props: {
  listings: ListingSummary[];
  catalogue: ShopCatalogue | undefined;
  currency: string;
}) {
  return (
    <ul class="tags">
      {props.listings.map((listing) => (
        <li key={listing.id}>
          <ListingCard listing={listing} catalogue={props.catalogue} currency={props.currency} />
        </li>
      ))}
    </ul>
  );
}

function Empty() {
  return (
    <div class="tag tag-blank">
      <h2>{words.emptyTitle}</h2>
      <p>{words.emptyLead}</p>
      <ol class="first-steps">
        {words.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
    </div>
  );
}
