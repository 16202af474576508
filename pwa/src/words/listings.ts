import { checkedWords } from "./parts.ts";

/** Words of the list of listings and of adding one. */
export const listingsWords = {
  title: "Listings",
  add: "Add a listing",
  compare: "Compare",
  what: "Appraise used equipment before you buy: walk around it, get a verdict, a repair estimate and three prices.",
  emptyTitle: "Nothing to appraise yet",
  emptyLead: "A listing is one piece of used equipment that somebody offers. What you do with it here:",
  steps: [
    "Add it from the advertisement: what kind it is, what is asked, how far away.",
    "At the seller's, walk around it check by check, in an order that leaves power and load for last. No signal is needed.",
    "Read what was found, what putting it right costs, and up to what price you come out ahead.",
  ],
  asking: "Asking",
  noAsking: "No price told",
  untitled: (kind: string) => (kind === "" ? "Listing without a title" : `${kind}, no title yet`),
  unknownKind: "Kind not known to this version",
  noKind: "Kind not told yet",
  checks: checkedWords,
  notWalked: (all: number) => `Not walked around yet · ${all} checks`,
  demo: "Invented demonstration",
  conflicts: (n: number) => (n === 1 ? "1 field entered twice" : `${n} fields entered twice`),
  changedAfterDelete: "Deleted, but changed later on another device. Open it to decide.",
  deletedTitle: (n: number) => `Deleted (${n})`,
  failed: "The listings could not be read:",
};

export const newListingWords = {
  title: "New listing",
  ask: "What kind of equipment is it?",
  lead: "The kind decides what is checked. The listing is made when you tap; title, price and place come next.",
  parts: (checks: number, minutes: number) => `${checks} checks · about ${minutes} minutes`,
  none: "No kinds of equipment are known: the engine did not start. Reload the page.",
  label: (kind: string) => `New listing: ${kind}`,
};
