/** Every group of English words with its Spanish one; a test holds the list to what there is. */
import { findWords, standWords } from "../find.ts";
import { listingsWords, newListingWords } from "../listings.ts";
import { uniteWords } from "../unite.ts";
import { find, stand } from "./find.ts";
import { listings, newListing } from "./listings.ts";
import { unite } from "./unite.ts";

const pair = <T extends object>(english: T, own: T): readonly [object, object] => [english, own];

export const pairs = [
  pair(findWords, find),
  pair(listingsWords, listings),
  pair(newListingWords, newListing),
  pair(standWords, stand),
  pair(uniteWords, unite),
];
