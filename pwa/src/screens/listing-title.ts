import { listingsWords as words } from "../words/listings.ts";

/** What a listing is called while it has no title of its own. */
export function listingTitle(title: string, kind: string | undefined): string {
  return title.trim() === "" ? words.untitled(kind ?? "") : title;
}

/** Demonstrations say of themselves in their note that they are invented. */
export const isDemo = (note: string): boolean => /\binvented\b/i.test(note);
