import type {
  File as AppraisalFile,
  CareBelief,
  Finding,
  LandingChoice,
  Listing,
  Part,
  Photo,
  PhotoPair,
  Quantity,
  Range,
  Rubric,
  Shop,
} from "../generated/types.ts";
import { saveWords } from "../words/data.ts";
import { fileWords, rightWords } from "../words/file.ts";
import { DataError } from "./error.ts";
import { haulage, phasesOf, site } from "./file-shop.ts";
import { adjust, amountedOf, comparables, lost, newPriceOf, yearOf } from "./file-worth.ts";
import { listingDoc } from "./id.ts";
import { marksPath, marksRight, readMarks } from "./photo-marks.ts";
import { pairOf, standingPairs } from "./photo-pair.ts";
import { doc } from "./read.ts";
import { compact, orNone, Reader, type Values } from "./reader.ts";
import { keptRubric, ownRubrics } from "./rubric.ts";
import { rubricMarkOf } from "./rubric-mark.ts";
import { integerOf, isRecord, mapOf, numberOf, quantityOf, rangeOf, rubricOf, textOf } from "./shape.ts";
import type { Json } from "./value.ts";

const FILE_FORMAT = "asfound-appraisal";
const FILE_VERSION = 1;

export interface AppraisalDocs {
  listing: Values;
  shop: Values;
  book: Values;
  comparables: Values;
}

/** The engine's file from the values of the documents; wrong-typed values are left out and listed. */
export function appraisalFile(
  docs: AppraisalDocs,
  defaultShop: Shop,
  madeWith?: Rubric,
): { file: AppraisalFile; problems: string[] } {
  const problems: string[] = [];
  const listing = new Reader(docs.listing, problems, "");
  const named = listing.get("rubric", rubricOf, rightWords.rubric);
  const rubric = madeWith ? { id: madeWith.id, version: madeWith.version } : named;
  const shop = shopSettings(docs.shop, defaultShop);
  const file = compact<AppraisalFile>({
    format: FILE_FORMAT,
    version: FILE_VERSION,
    rubric: rubric ?? { id: "", version: 0 },
    made_with: madeWith,
    parts: ownParts(new Reader(docs.book, problems, fileWords.book)),
    date: listing.get("date", dateOf, rightWords.date) ?? "",
    listing: listingPart(listing),
    facts: orNone(textsUnder(listing, "fact/")),
    asked: orNone(textsUnder(listing, "asked/")),
    findings: orNone(findings(listing)),
    ways: orNone(textsUnder(listing, "way/")),
    prices: orNone(prices(new Reader(docs.book, problems, fileWords.book))),
    landing: orNone(landing(listing)),
    comparables: comparables(new Reader(docs.comparables, problems, fileWords.comparables), rubric?.id ?? ""),
    adjust: adjust(listing),
    new_price: listing.get("newprice", newPriceOf, rightWords.range),
    lost: lost(listing),
    care: listing.get("care", careOf, rightWords.chances),
    shop: judgedShop(docs.shop, shop.shop),
  });
  return { file, problems: [...problems, ...shop.problems] };
}

const dateOf = (value: Json | undefined): string | undefined => {
  const text = textOf(value);
  return text && /^\d{4}-\d{2}-\d{2}$/.test(text) ? text : undefined;
};

function listingPart(read: Reader): Listing {
  return compact<Listing>({
    title: read.text("title") ?? "",
    maker: read.text("maker"),
    model: read.text("model"),
    serial: read.text("serial"),
    made: read.get("made", yearOf, rightWords.year),
    capacity: read.quantity("capacity"),
    hours: read.get("hours", amountedOf, rightWords.hours) || undefined,
    effective_age: read.get("effective_age", amountedOf, rightWords.years) || undefined,
    weight: read.quantity("weight"),
    length: read.quantity("length"),
    width: read.quantity("width"),
    height: read.quantity("height"),
    power: read.quantity("power"),
    voltage: read.quantity("voltage"),
    phases: read.get("phases", phasesOf, rightWords.phases),
    current: read.quantity("current"),
    place: read.text("place"),
    distance: read.quantity("distance"),
    asking: read.money("asking"),
    seller: read.text("seller"),
    seen: read.text("seen"),
    text: read.text("text"),
    note: read.text("note"),
    photos: photosUnder(read, "photo/"),
  });
}

/** What is told of a listing, for asking the engine whether it makes sense. */
export const listingFigures = (values: Values): Listing => listingPart(new Reader(values, [], ""));

const HASH = /^[0-9a-f]{64}$/;
const MARKS = marksPath("");

/** Oldest first, then by hash, so that the order is the same everywhere. */
function photosUnder(read: Reader, prefix: string): Photo[] | undefined {
  const photos: Photo[] = [];
  for (const [hash, path] of read.under(prefix)) {
    if (hash.endsWith(MARKS)) continue;
    const photo = read.get(
      path,
      (value) => (HASH.test(hash) ? photoOf(hash, value) : undefined),
      rightWords.photo,
    );
    if (photo) photos.push({ ...photo, ...marksOf(read, marksPath(path)) });
  }
  photos.sort((a, b) => ((a.at ?? "") + a.hash < (b.at ?? "") + b.hash ? -1 : 1));
  return photos.length > 0 ? photos : undefined;
}

/** What is drawn over a photo. Marks of a photo that is gone are nobody's. */
function marksOf(read: Reader, path: string): Pick<Photo, "marks"> {
  const found = read.get(path, readMarks, rightWords.marks);
  if (found && found.left > 0) read.bad(path, marksRight(found.left));
  return found && found.marks.length > 0 ? { marks: found.marks } : {};
}

/** Photos side by side, by the id of the pair; one whose photo is gone shows nothing. */
function pairsUnder(read: Reader, prefix: string, photos: readonly Photo[]): PhotoPair[] | undefined {
  const found = [...read.under(prefix)]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, path]) => read.get(path, pairOf, rightWords.pair))
    .filter((pair) => pair !== undefined);
  const pairs = standingPairs(
    found,
    photos.map((photo) => photo.hash),
  );
  return pairs.length > 0 ? pairs : undefined;
}

function photoOf(hash: string, value: Json | undefined): Photo | undefined {
  return isRecord(value) ? compact<Photo>({ hash, at: textOf(value.at) }) : undefined;
}

function textsUnder(read: Reader, prefix: string): Record<string, string> {
  const out: Record<string, string> = {};
  for (const [id, path] of read.under(prefix)) {
    const text = read.text(path);
    if (text !== undefined) out[id] = text;
  }
  return out;
}

function findings(read: Reader): Record<string, Finding> {
  const checks = new Set<string>();
  for (const [rest] of read.under("finding/")) checks.add(rest.split("/")[0] ?? "");
  const out: Record<string, Finding> = {};
  for (const check of [...checks].sort()) {
    const found = finding(read, `finding/${check}`);
    if (Object.keys(found).length > 0) out[check] = found;
  }
  return out;
}

function finding(read: Reader, at: string): Finding {
  const answer = read.get(`${at}/answer`, answerOf, rightWords.answer);
  const measured = read.get(
    `${at}/measured`,
    (value) => (isRecord(value) ? value : undefined),
    rightWords.measured,
  );
  const badMember = (name: string) => read.bad(`${at}/measured ${name}`, rightWords.quantityOrWord);
  const photos = photosUnder(read, `${at}/photo/`);
  return compact<Finding>({
    ...answer,
    measured: orUndefined(mapOf<Quantity>(measured?.quantities, quantityOf, badMember)),
    words: orUndefined(mapOf<string>(measured?.words, textOf, badMember)),
    maker: makersLimit(measured?.maker, badMember),
    note: read.text(`${at}/note`),
    photos,
    pairs: pairsUnder(read, `${at}/pair/`, photos ?? []),
  });
}

function makersLimit(value: Json | undefined, bad: (name: string) => void): Quantity | undefined {
  const found = quantityOf(value);
  if (!found && value !== undefined && value !== null) bad("maker");
  return found;
}

const orUndefined = <T extends object>(found: T | undefined): T | undefined => found && orNone(found);

function answerOf(value: Json | undefined): Pick<Finding, "grade" | "skipped"> | undefined {
  if (!isRecord(value)) return undefined;
  const grade = integerOf(value.grade);
  if (grade !== undefined) return grade >= 0 && grade <= 4 ? { grade } : undefined;
  const skipped = textOf(value.skipped);
  return skipped ? { skipped } : undefined;
}

function prices(read: Reader): Record<string, Range> {
  const out: Record<string, Range> = {};
  for (const [part, path] of read.under("part/")) {
    const range = read.range(path);
    if (range) out[part] = range;
  }
  return out;
}

/** Entries of the user's own in the price book, by id. */
function ownParts(read: Reader): Part[] | undefined {
  const out: Part[] = [];
  for (const [id, path] of read.under("own/")) {
    const part = read.get(path, (value) => partOf(id, value), rightWords.part);
    if (part) out.push(part);
  }
  return out.length > 0 ? out : undefined;
}

/** The same, read from this device. */
export async function bookParts(): Promise<Part[]> {
  return ownParts(new Reader((await doc("book")).values, [], "")) ?? [];
}

function partOf(id: string, value: Json | undefined): Part | undefined {
  if (!isRecord(value)) return undefined;
  const title = textOf(value.title);
  const unit = textOf(value.unit);
  const price = rangeOf(value.price);
  return title && unit && price ? { id, title, unit, price } : undefined;
}

function landing(read: Reader): Record<string, LandingChoice> {
  const out: Record<string, LandingChoice> = {};
  for (const [id, path] of read.under("landing/")) {
    const choice = read.get(path, landingOf, rightWords.landing);
    if (choice) out[id] = choice;
  }
  return out;
}

function landingOf(value: Json | undefined): LandingChoice | undefined {
  if (!isRecord(value)) return undefined;
  const cost = rangeOf(value.cost);
  const absent = value.cost === undefined || value.cost === null;
  if (!cost && !absent) return undefined;
  return compact<LandingChoice>({ off: value.off === true ? true : undefined, cost });
}

/** What was believed of its keeping before looking; half a belief is none. */
function careOf(value: Json | undefined): CareBelief | undefined {
  if (!isRecord(value)) return undefined;
  const [well, ordinary, neglected] = [value.well, value.ordinary, value.neglected].map(basisPointsOf);
  if (well === undefined || ordinary === undefined || neglected === undefined) return undefined;
  return well + ordinary + neglected === 10_000 ? { well, ordinary, neglected } : undefined;
}

/** The rates the shop set itself. */
function ownRates(read: Reader): Record<string, number> {
  const rates: Record<string, number> = {};
  for (const [trade, path] of read.under("rate/")) {
    const rate = read.money(path);
    if (rate !== undefined) rates[trade] = rate;
  }
  return rates;
}

/** The shop as a judgement takes it: with a region, the engine must know which rates are its examples. */
function judgedShop(values: Values, shop: Shop): Shop {
  return shop.region === undefined ? shop : { ...shop, rates: ownRates(new Reader(values, [], "")) };
}

/** The shop's settings over the defaults. */
export function shopSettings(shop: Values, defaultShop: Shop): { shop: Shop; problems: string[] } {
  const problems: string[] = [];
  const read = new Reader(shop, problems, fileWords.settings);
  const region = read.get("region", basisPointsOf, rightWords.points) || undefined;
  const rates = { ...defaultShop.rates, ...ownRates(read) };
  const weights: Record<string, number> = {};
  for (const [criterion, path] of read.under("weight/")) {
    const weight = read.get(path, basisPointsOf, rightWords.whole);
    if (weight !== undefined) weights[criterion] = weight;
  }
  const points = (names: readonly string[]) => (value: Json | undefined) => pointsOf(names, value);
  const odds = read.get("odds", points(["opening", "fair", "walk_away"]), rightWords.odds);
  const overrun = read.get("overrun", points(["mean", "sd"]), rightWords.overrun);
  return {
    shop: {
      currency: read.text("currency") ?? defaultShop.currency,
      units: read.text("units") ?? defaultShop.units,
      rates,
      tax: read.get("tax", basisPointsOf, rightWords.rate) ?? defaultShop.tax,
      fees: read.money("fees") ?? defaultShop.fees,
      odds: { ...defaultShop.odds, ...odds },
      overrun: { ...defaultShop.overrun, ...overrun },
      ...compact<Pick<Shop, "day">>({
        day: read.get("day", dayOf, rightWords.day) ?? defaultShop.day,
      }),
      kept: read.get("kept", basisPointsOf, rightWords.points) ?? defaultShop.kept,
      ...(Object.keys(weights).length > 0 ? { weights: { ...defaultShop.weights, ...weights } } : {}),
      ...compact<Pick<Shop, "region" | "site" | "haulage">>({
        region,
        site: site(read),
        haulage: haulage(read),
      }),
    },
    problems,
  };
}

const basisPointsOf = (value: Json | undefined): number | undefined => {
  const n = numberOf(value);
  return n !== undefined && Number.isInteger(n) && n >= 0 ? n : undefined;
};

const dayOf = (value: Json | undefined): number | undefined => {
  const n = numberOf(value);
  return n !== undefined && n > 0 && n <= 24 ? n : undefined;
};

/** All or nothing: half of one setting with half of another is nobody's choice. */
function pointsOf(names: readonly string[], value: Json | undefined): Record<string, number> | undefined {
  if (!isRecord(value)) return undefined;
  const read = names.map((name) => [name, basisPointsOf(value[name])] as const);
  return read.every(([, n]) => n !== undefined)
    ? (Object.fromEntries(read) as Record<string, number>)
    : undefined;
}

/** What the engine carries itself, and the defaults of a shop. */
export interface Carried {
  rubrics: Rubric[];
  shop: Shop;
}

/** The same, read from this device. `listing` is the id or `listing:<id>`. */
export async function loadAppraisalFile(
  listing: string,
  carried: Carried,
): Promise<{ file: AppraisalFile; problems: string[] }> {
  const name = listing.startsWith("listing:") ? listing : listingDoc(listing);
  const [own, shop, book, comparables] = await Promise.all([
    doc(name),
    doc("shop"),
    doc("book"),
    doc("comparables"),
  ]);
  if (own.values.size === 0) throw new DataError("missing", saveWords.noListing);
  const made = await madeWith(own.values.get("rubric"), carried.rubrics);
  const { file, problems } = appraisalFile(
    { listing: own.values, shop: shop.values, book: book.values, comparables: comparables.values },
    carried.shop,
    made.rubric,
  );
  return { file, problems: made.problem ? [...problems, made.problem] : problems };
}

/**
 * The same with what a verdict hangs on alone: no settings, prices or comparables. `certain`: it is judged by the
 * very rubric it names, so what comes later cannot change the verdict.
 */
export async function loadFindings(
  listing: string,
  carried: Carried,
): Promise<{ file: AppraisalFile; certain: boolean }> {
  const [own, book] = await Promise.all([doc(listing), doc("book")]);
  const named = rubricOf(own.values.get("rubric"));
  const made = await madeWith(own.values.get("rubric"), carried.rubrics);
  const none: Values = new Map();
  const docs = { listing: own.values, shop: none, book: book.values, comparables: none };
  const { file } = appraisalFile(docs, carried.shop, made.rubric);
  const used = made.rubric ?? carried.rubrics.find((r) => r.id === named?.id);
  return { file, certain: used !== undefined && used.version === named?.version };
}

/** The rubric an appraisal was made with, where the engine does not carry that very one. */
async function madeWith(
  value: Json | undefined,
  carried: Rubric[],
): Promise<{ rubric?: Rubric; problem?: string }> {
  const named = rubricOf(value);
  if (!named || carried.some((r) => r.id === named.id && r.version === named.version)) return {};
  const mark = rubricMarkOf(value);
  const rubric = mark && (await keptRubric(mark));
  if (rubric) return { rubric };
  if (carried.some((r) => r.id === named.id)) return {};
  const now = (await ownRubrics()).find((own) => own.mark.id === named.id);
  return now
    ? {
        rubric: now.rubric,
        problem: fileWords.otherVersion(named.version, now.mark.version),
      }
    : {};
}
