import { Page } from "../parts/page.tsx";
import { pageWords as words } from "../words/parts.ts";

/** Stands where a listing is not on this device. */
export function NoListing() {
  return (
    <Page
      title={words.noListingTitle}
      actions={
        <a class="button button-main" href="/">
          {words.toListings}
        </a>
      }
    >
      <p>{words.noListing}</p>
    </Page>
  );
}
