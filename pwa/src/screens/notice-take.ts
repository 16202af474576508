import { listingFigures } from "../data/file.ts";
import { doc } from "../data/read.ts";
import { type Json, sameValue } from "../data/value.ts";
import type { Proposal, Rubric } from "../generated/types.ts";
import { save } from "../parts/save.ts";
import type { ListingDoc } from "../parts/use-listing.ts";
import { noticeWords as words } from "../words/notice.ts";
import { refusedChange } from "./keep-checked.ts";
import { pathTitle } from "./value-words.ts";

/** What a text says of one field, beside what stands there. */
export interface Told {
  path: string;
  title: string;
  /** What stands in the listing; undefined for nothing. */
  now: Json | undefined;
  proposals: Proposal[];
}

/** A proposal's value as the listing keeps it. */
export function proposedValue(p: Proposal): Json {
  if (p.quantity) return { n: p.quantity.n, unit: p.quantity.unit };
  return p.cents ?? p.number ?? p.text ?? "";
}

const stands = (now: Json | undefined): boolean => now !== undefined && now !== null && now !== "";

/** The proposals by field, in the order the engine gave them; the kind is chosen elsewhere. */
export function toldBy(proposals: Proposal[], values: ReadonlyMap<string, Json>, rubric?: Rubric): Told[] {
  const fields = new Map<string, Told>();
  for (const p of proposals) {
    if (p.field === "rubric") continue;
    const told = fields.get(p.field) ?? {
      path: p.field,
      title: p.field === "capacity" && rubric ? rubric.capacity.title : pathTitle(p.field, rubric),
      now: stands(values.get(p.field)) ? values.get(p.field) : undefined,
      proposals: [],
    };
    told.proposals.push(p);
    fields.set(p.field, told);
  }
  return [...fields.values()];
}

/** Whether the listing says so already. */
export const agrees = (told: Told, p: Proposal): boolean =>
  told.now !== undefined && sameValue(told.now, proposedValue(p));

/** What is left to confirm: fields that stand as no proposal has them. */
export const unconfirmed = (all: Told[]): Told[] => all.filter((t) => !t.proposals.some((p) => agrees(t, p)));

/** What may be taken at one tap for all: fields that are empty, each with one reading that is surer than any other. */
export function takeable(all: Told[]): { told: Told; proposal: Proposal }[] {
  return all.flatMap((told) => {
    const [best, next] = told.proposals;
    const clear = best && best.sure !== "doubtful" && best.sure !== next?.sure;
    return told.now === undefined && clear && best.foreign === undefined ? [{ told, proposal: best }] : [];
  });
}

/** Keeps what was tapped; what the engine would refuse is left out and said. */
export async function take(
  listing: ListingDoc,
  chosen: { told: Told; proposal: Proposal }[],
  label: string,
): Promise<string | undefined> {
  let { values } = await doc(listing.doc);
  const changes: { doc: string; path: string; value: Json }[] = [];
  const refused: string[] = [];
  for (const { told, proposal } of chosen) {
    const value = proposedValue(proposal);
    const next = new Map(values).set(told.path, value);
    const why = await refusedChange({ listing: listingFigures(values) }, { listing: listingFigures(next) });
    if (why !== undefined) {
      refused.push(words.refused(told.title, why));
      continue;
    }
    values = next;
    changes.push({ doc: listing.doc, path: told.path, value });
  }
  const problem = changes.length > 0 ? await save(label, changes) : undefined;
  return problem ?? (refused.length > 0 ? refused.join(" ") : undefined);
}
