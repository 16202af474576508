/**
 * The one typed door to the engine. It lives in a worker; every call is answered
 * by a value or by an EngineError in words fit for the screen.
 */
import type {
  Catalogue,
  Change,
  CheckRequest,
  Comparison,
  Document,
  DocumentAsk,
  File,
  Import,
  ImportChoice,
  LimitResult,
  Notice,
  NoticeRequest,
  Part,
  PriceImport,
  PricesWriteRequest,
  PricesWritten,
  Range,
  Result,
  Rubric,
  SheetTable,
  TablesRequest,
  VisitPlan,
} from "../generated/types.ts";
import { engineWords } from "../words/engine.ts";
import { catalogueUrlOf, languageOf, localeSpoken, setLocale } from "./locale.ts";
import { EngineError, WorkerDoor } from "./worker-door.ts";

export { EngineError, setLocale };

type Call =
  | "appraise"
  | "visit"
  | "notice"
  | "check"
  | "compare"
  | "comparables"
  | "changes"
  | "prices-read"
  | "prices-write"
  | "document"
  | "tables"
  | "csv"
  | "limit"
  | "learn"
  | "ready"
  | "quantity";

const learned = new Set<string>();

const door = new WorkerDoor(() => {
  learned.clear();
  return new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });
}, engineWords);

/** Every question says in which language it is answered. */
const ask = <T>(call: Call, argument: object): Promise<T> =>
  door.ask<T>(call, { locale: localeSpoken(), ...argument });

/** Lets the engine speak the language of a locale besides the app's own, for a document in it. */
async function learn(locale: string): Promise<void> {
  const language = languageOf(locale);
  if (language === languageOf(localeSpoken()) || learned.has(language)) return;
  await ask("learn", { catalogue: await fetchCatalogue(locale) });
  learned.add(language);
}

/** The whole judgement of one appraisal, optionally at another price (cents) and with a plan of some minutes. */
export const appraise = (
  file: File,
  asked: { price?: number | undefined; minutes?: number | undefined } = {},
): Promise<Result> => ask("appraise", { file, price: asked.price, minutes: asked.minutes });

/** What to settle before the drive: questions, what to bring, time, what stays open. */
export const planVisit = (file: File): Promise<VisitPlan> => ask("visit", { file });

/** What the text of a listing tells, each with the words it came from. */
export const readNotice = (request: NoticeRequest): Promise<Notice> => ask("notice", request);

/** Several appraisals side by side, each at its asking price or at the price given for it (cents). */
export const compare = (files: File[], prices?: (number | null)[]): Promise<Comparison> =>
  ask("compare", { files, prices });

/** A document of an appraisal, in the language and with the parts asked for: what the preview, the PDF and the seller's page show. */
export async function makeDocument(file: File, asked: DocumentAsk): Promise<Document> {
  await learn(asked.locale);
  return ask("document", { file, ask: asked });
}

/** The sheet of several appraisals side by side, each at its asking price or at the price given for it (cents). */
export async function makeComparison(
  files: File[],
  asked: DocumentAsk,
  prices?: (number | null)[],
): Promise<Document> {
  await learn(asked.locale);
  return ask("document", { files, prices, ask: asked });
}

/** Everything as tables, those with no rows left out: what CSV and the workbook are written from. */
export async function makeTables(
  files: File[],
  more: Omit<TablesRequest, "files"> = {},
): Promise<SheetTable[]> {
  await learn(more.locale ?? "");
  return ask("tables", { ...more, files });
}

/** A table as CSV that opens in a spreadsheet. */
export async function writeCSV(table: SheetTable): Promise<string> {
  const { text } = await ask<{ text: string }>("csv", { table });
  return text;
}

/** One measured limit; values are text with units, as typed. */
export const computeLimit = (name: string, given: Record<string, string>): Promise<LimitResult> =>
  ask("limit", { name, given });

/** Refuses, by an EngineError that names the field, figures of a shop or a listing that make no sense. */
export const checkFigures = (figures: CheckRequest): Promise<boolean> => ask("check", figures);

/** Reads a quantity as a person types it ("1 1/2 in", "9,5 mm"). */
export const parseQuantity = (
  text: string,
  dimension: string,
  unit: string,
): Promise<{ n: number; unit: string }> => ask("quantity", { text, dimension, unit });

/** Far above what the engine takes, so that it is the engine that says what is too large. */
const mostBytes = 32 * 1024 * 1024;

/** Comparables of one kind of equipment out of a table as it was saved, and how it was read. */
export async function readComparables(
  rubric: string,
  table: Blob,
  choice: ImportChoice,
  own?: Rubric,
): Promise<Import> {
  const source = await base64(table.slice(0, mostBytes));
  return ask("comparables", { rubric, source, choice, own });
}

/** What judging a file by another rubric than the one it was made with would change. */
export const rubricChanges = (from: Rubric, to: Rubric, file: File): Promise<Change[]> =>
  ask("changes", { from, to, file });

/** A price book out of a table as it was saved, beside the own prices and entries that stand. */
export async function readPrices(
  table: Blob,
  book: { own: Record<string, Range>; parts: Part[]; currency: string },
): Promise<PriceImport> {
  const source = await base64(table.slice(0, mostBytes));
  return ask("prices-read", { source, ...book });
}

/** The price book as CSV. */
export const writePrices = (book: PricesWriteRequest): Promise<PricesWritten> => ask("prices-write", book);

function base64(blob: Blob): Promise<string> {
  const reader = new FileReader();
  return new Promise((resolve, reject) => {
    reader.onload = () => resolve(String(reader.result).replace(/^[^,]*,?/, ""));
    reader.onerror = () => reject(new EngineError(engineWords.fileGone));
    reader.readAsDataURL(blob);
  });
}

/** Rubrics, limits, labels and defaults, once the engine is ready: their one home is Go, which writes them. */
export async function catalogue(): Promise<Catalogue> {
  const [answer] = await Promise.all([plainCatalogue(), ask("ready", {})]);
  if (performance.getEntriesByName("engine-ready").length === 0) performance.mark("engine-ready");
  document.documentElement.dataset.engine = "ready";
  return answer;
}

/** The same without the engine: enough to capture findings while it cannot be loaded. */
export const plainCatalogue = (): Promise<Catalogue> => fetchCatalogue(localeSpoken());

async function fetchCatalogue(locale: string): Promise<Catalogue> {
  const failed = (cause: unknown) => new EngineError(engineWords.noChecks(String(cause)));
  const response = await fetch(catalogueUrlOf(locale)).catch((cause: unknown) => {
    throw failed(cause);
  });
  if (!response.ok) throw failed(response.status);
  return (await response.json()) as Catalogue;
}
