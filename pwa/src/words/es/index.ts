/** Every group of English words with its Spanish one; a test holds the list to what there is. */
import { answerWords, handOverWords, linkWords } from "../hand-over.ts";
import { listingsWords, newListingWords } from "../listings.ts";
import { paperWords } from "../papers.ts";
import { answer, handOver, link } from "./hand-over.ts";
import { listings, newListing } from "./listings.ts";
import { papers } from "./papers.ts";

const pair = <T extends object>(english: T, own: T): readonly [object, object] => [english, own];

export const pairs = [
  pair(handOverWords, handOver),
  pair(linkWords, link),
  pair(answerWords, answer),
  pair(listingsWords, listings),
  pair(newListingWords, newListing),
  pair(paperWords, papers),
];
