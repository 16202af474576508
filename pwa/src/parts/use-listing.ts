import { useMemo } from "preact/hooks";
import { listingDoc } from "../data/id.ts";
import { photoHash, photoPath } from "../data/photo.ts";
import { marksPath, type PhotoMark, readMarks } from "../data/photo-marks.ts";
import { pairOf, standingPairs } from "../data/photo-pair.ts";
import { type Conflict, type Doc, doc } from "../data/read.ts";
import type { Json } from "../data/value.ts";
import type { PhotoPair, Quantity, RubricRef } from "../generated/types.ts";
import { useWatch } from "./use-watch.ts";

/** What was found at one check, as far as it is on this device. */
export interface FindingView {
  grade: number | undefined;
  skipped: string | undefined;
  /** Measured quantities and words by name, as entered. */
  quantities: Record<string, Quantity>;
  words: Record<string, string>;
  maker: Quantity | undefined;
  note: string;
  photos: string[];
  /** Photos that stand side by side, by the id of their row. */
  pairs: (PhotoPair & { id: string })[];
}

/** One listing: the values that won, by path, and where devices differ. */
export interface ListingDoc {
  id: string;
  /** `listing:<id>` */
  doc: string;
  values: ReadonlyMap<string, Json>;
  conflicts: Conflict[];
  /** Nothing is known of it here. */
  empty: boolean;
  deleted: boolean;
  title: string;
  rubric: RubricRef | undefined;
  text(path: string): string;
  number(path: string): number | undefined;
  quantity(path: string): Quantity | undefined;
  /** Answers to the rubric's facts, by fact. */
  facts: Record<string, string>;
  finding(check: string): FindingView;
  /** Hashes of photos of the whole, oldest first. */
  photos: string[];
  /** What is drawn over a photo of the whole, or of a check. */
  marks(hash: string, check?: string): PhotoMark[];
}

const isObject = (value: Json | undefined): value is { [key: string]: Json } =>
  typeof value === "object" && value !== null && !Array.isArray(value);

function asQuantity(value: Json | undefined): Quantity | undefined {
  if (!isObject(value)) return undefined;
  const { n, unit } = value;
  return typeof n === "number" && typeof unit === "string" ? { n, unit } : undefined;
}

function asRubric(value: Json | undefined): RubricRef | undefined {
  if (!isObject(value)) return undefined;
  const { id, version } = value;
  return typeof id === "string" && typeof version === "number" ? { id, version } : undefined;
}

/** Hashes standing directly under a prefix, oldest first by their time. */
function photosUnder(values: ReadonlyMap<string, Json>, prefix: string): string[] {
  const found: { hash: string; at: string }[] = [];
  for (const [path, value] of values) {
    // What belongs to a photo stands below it.
    if (!path.startsWith(prefix) || photoHash(path) === undefined) continue;
    const at = isObject(value) && typeof value.at === "string" ? value.at : "";
    found.push({ hash: path.slice(prefix.length), at });
  }
  found.sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : a.hash < b.hash ? -1 : 1));
  return found.map((p) => p.hash);
}

function pairsUnder(
  values: ReadonlyMap<string, Json>,
  prefix: string,
  photos: readonly string[],
): FindingView["pairs"] {
  const found: FindingView["pairs"] = [];
  for (const [path, value] of values) {
    const pair = path.startsWith(prefix) ? pairOf(value) : undefined;
    if (pair) found.push({ id: path.slice(prefix.length), ...pair });
  }
  return standingPairs(
    found.sort((a, b) => (a.id < b.id ? -1 : 1)),
    photos,
  );
}

function findingAt(values: ReadonlyMap<string, Json>, check: string): FindingView {
  const answer = values.get(`finding/${check}/answer`);
  const measured = values.get(`finding/${check}/measured`);
  const photos = photosUnder(values, `finding/${check}/photo/`);
  const view: FindingView = {
    grade: isObject(answer) && typeof answer.grade === "number" ? answer.grade : undefined,
    skipped: isObject(answer) && typeof answer.skipped === "string" ? answer.skipped : undefined,
    quantities: {},
    words: {},
    maker: isObject(measured) ? asQuantity(measured.maker) : undefined,
    note: "",
    photos,
    pairs: pairsUnder(values, `finding/${check}/pair/`, photos),
  };
  const note = values.get(`finding/${check}/note`);
  if (typeof note === "string") view.note = note;
  if (isObject(measured)) {
    for (const [name, value] of Object.entries(isObject(measured.quantities) ? measured.quantities : {})) {
      const quantity = asQuantity(value);
      if (quantity) view.quantities[name] = quantity;
    }
    for (const [name, value] of Object.entries(isObject(measured.words) ? measured.words : {})) {
      if (typeof value === "string") view.words[name] = value;
    }
  }
  return view;
}

/** Reads a stored document as a listing. */
function asListing(id: string, stored: Doc): ListingDoc {
  const { values } = stored;
  const text = (path: string) => {
    const value = values.get(path);
    return typeof value === "string" ? value : "";
  };
  const facts: Record<string, string> = {};
  for (const [path, value] of values) {
    if (path.startsWith("fact/") && typeof value === "string") facts[path.slice(5)] = value;
  }
  return {
    id,
    doc: listingDoc(id),
    values,
    conflicts: stored.conflicts,
    empty: values.size === 0,
    deleted: values.get("deleted") === true,
    title: text("title"),
    rubric: asRubric(values.get("rubric")),
    text,
    number: (path) => {
      const value = values.get(path);
      return typeof value === "number" ? value : undefined;
    },
    quantity: (path) => asQuantity(values.get(path)),
    facts,
    finding: (check) => findingAt(values, check),
    photos: photosUnder(values, "photo/"),
    marks: (hash, check) => readMarks(values.get(marksPath(photoPath(hash, check))))?.marks ?? [],
  };
}

/** One listing, live; undefined until the store has answered. */
export function useListing(id: string): ListingDoc | undefined {
  const { value } = useWatch(`listing:${id}`, () => doc(listingDoc(id)));
  return useMemo(() => (value ? asListing(id, value) : undefined), [id, value]);
}

/** Any document, live: "shop", "book", "comparables". */
export function useDoc(id: string): Doc | undefined {
  return useWatch(id, () => doc(id)).value;
}
