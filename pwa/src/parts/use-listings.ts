import { useEffect, useMemo, useState } from "preact/hooks";
import { type ListingSummary, listings } from "../data/read.ts";
import { keptRubric } from "../data/rubric.ts";
import { rubricMarkOf } from "../data/rubric-mark.ts";
import type { Rubric } from "../generated/types.ts";
import type { ShopCatalogue } from "./use-catalogue.ts";
import { useWatch, type Watched } from "./use-watch.ts";

/** The listings as they were read last, so that the list stands at once when one comes back to it. */
let last: ListingSummary[] | undefined;
let texts = new Map<string, { text: string; listing: ListingSummary }>();

/** A listing that did not change stays the same object: its card need not be drawn again. */
function settled(read: ListingSummary[]): ListingSummary[] {
  const next: typeof texts = new Map();
  last = read.map((listing) => {
    const text = JSON.stringify(listing);
    const before = texts.get(listing.doc);
    const one = before?.text === text ? before : { text, listing };
    next.set(listing.doc, one);
    return one.listing;
  });
  texts = next;
  return last;
}

/** All listings, deleted ones too, live. */
export function useListings(): Watched<ListingSummary[]> {
  const watched = useWatch("listings", async () => settled(await listings({ deleted: true })));
  return { ...(last ? { value: last } : {}), ...watched };
}

/** Titles of kinds that the catalogue has not: an own rubric taken off its list, by its hash. */
const kept = new Map<string, Rubric | undefined>();

/** Tells what kind a listing is of; "" where that is not known here. */
export function useKinds(
  all: readonly ListingSummary[],
  catalogue: ShopCatalogue | undefined,
): (listing: ListingSummary) => string {
  const [read, setRead] = useState(0);
  const now = useMemo(() => new Map(catalogue?.rubrics.map((r) => [r.id, r.kind])), [catalogue]);
  useEffect(() => {
    if (!catalogue) return;
    let gone = false;
    const missing = all
      .filter((one) => one.rubric && !now.has(one.rubric.id))
      .flatMap((one) => rubricMarkOf({ ...one.rubric }) ?? [])
      .filter((mark) => !kept.has(mark.hash));
    const marks = new Map(missing.map((mark) => [mark.hash, mark]));
    if (marks.size === 0) return;
    void (async () => {
      for (const [hash, mark] of marks) kept.set(hash, await keptRubric(mark).catch(() => undefined));
      if (!gone) setRead((n) => n + 1);
    })();
    return () => {
      gone = true;
    };
  }, [all, catalogue, now]);
  return useMemo(
    () => (listing) => {
      const { rubric } = listing;
      if (!rubric) return "";
      const known = now.get(rubric.id);
      if (known !== undefined) return known;
      const hash = rubricMarkOf({ ...rubric })?.hash;
      return (hash !== undefined && kept.get(hash)?.kind) || "";
    },
    [now, read],
  );
}
