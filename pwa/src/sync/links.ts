/** Links given to a seller, and workbooks: the two things that only the server can make. */
import { linkTroubleWords as words } from "../words/server.ts";
import { call, type Fetch, Trouble } from "./http.ts";

/** A link as the server made it. Its secret stands in `path` and `url` and is never told again: keep the url. */
export interface CreatedLink {
  id: string;
  /** `/s/<token>`, below whatever name the server is reached by. With `?preview` after it a look does not count. */
  path: string;
  url: string;
  /** ISO 8601, UTC: the last moment it opens. */
  expires: string;
  /** The url as a QR code: one text a row, "1" dark and "0" light, without the quiet zone (leave 4 around it). */
  qr: string[];
  /** The url is reached from outside; otherwise it opens on this machine alone. */
  public: boolean;
}

export interface LinkOptions {
  /** newId(). Ask again with the same one when no answer came: no second link is made. */
  id: string;
  /** id of the listing, without `listing:` */
  listing: string;
  /** How long it opens, 1 to 90; 21 unless said. */
  days?: number;
  /** Ids of the document's parts that may be answered; they are marked `answer` there. */
  lines?: readonly string[];
}

export interface LinkState {
  id: string;
  state: "open" | "expired" | "withdrawn";
  listing: string;
  /** ISO 8601, UTC */
  created: string;
  expires: string;
  withdrawn: string | undefined;
  opened: { first: string; last: string; count: number } | undefined;
  /** Lines that have an answer. */
  answers: number;
}

/** A table of a workbook. */
export interface Sheet {
  name: string;
  title?: string;
  columns: readonly { title: string; kind: "text" | "number" | "money" | "date" }[];
  /** One cell a column: a text, a number (money in whole units, not cents), a day as YYYY-MM-DD, or null for none. */
  rows: readonly (readonly (string | number | null)[])[];
}

/** offline: no server answered; refused: it does not take this; made: there is such a link, opened or withdrawn. */
export type LinkTroubleCode = "offline" | "busy" | "unpaired" | "fault" | "garbled" | "made" | "refused";

/** Why there is no link or no workbook; the message is for the screen. */
export class LinkTrouble extends Error {
  override readonly name = "LinkTrouble";
  constructor(
    readonly code: LinkTroubleCode,
    message: string,
  ) {
    super(message);
  }
}

const TIME_LIMIT_MS = 120_000;

const direct: Fetch = (url, init) => fetch(url, init);

/**
 * Gives a document with its photo copies to the server and gets its link. Photos are JPEGs by Photo.key: one for
 * each that is not missing, and no other. Document is a rubrics/document.Document. Throws LinkTrouble.
 */
export async function createLink(
  document: object,
  photos: ReadonlyMap<string, ArrayBuffer>,
  options: LinkOptions,
  fetcher: Fetch = direct,
): Promise<CreatedLink> {
  const form = new FormData();
  const { id, listing, days, lines } = options;
  const head = { id, listing, days, lines: lines ?? [], document };
  form.append("link", new Blob([JSON.stringify(head)], { type: "application/json" }));
  for (const [key, data] of photos) form.append("photo", new Blob([data], { type: "image/jpeg" }), key);
  const init = { method: "POST", headers: { asfound: "1" }, body: form };
  const body = await ask(fetcher, "/api/links", init, words.noLink);
  const { path, url, expires, qr } = body;
  const texts = typeof path === "string" && typeof url === "string" && typeof expires === "string";
  if (!texts || !Array.isArray(qr) || !qr.every((row) => typeof row === "string")) throw garbled();
  return { id, path, url, expires, qr, public: body.public === true };
}

/** From then on the link opens no more, whatever happened to it before. Throws LinkTrouble. */
export async function withdrawLink(id: string, fetcher: Fetch = direct): Promise<void> {
  await ask(fetcher, `/api/links/${id}`, { method: "DELETE" }, words.noWithdrawal);
}

/** How a link stands; undefined when the server knows none of that id. Throws LinkTrouble. */
export async function linkState(id: string, fetcher: Fetch = direct): Promise<LinkState | undefined> {
  const body = await ask(fetcher, `/api/links/${id}`, {}, words.noState, true);
  if (!body) return undefined;
  const { state, listing, created, expires } = body;
  if (state !== "open" && state !== "expired" && state !== "withdrawn") throw garbled();
  if (typeof listing !== "string" || typeof created !== "string" || typeof expires !== "string")
    throw garbled();
  return {
    id,
    state,
    listing,
    created,
    expires,
    withdrawn: typeof body.withdrawn === "string" ? body.withdrawn : undefined,
    opened: openedOf(body.opened),
    answers: typeof body.answers === "number" ? body.answers : 0,
  };
}

function openedOf(value: unknown): LinkState["opened"] {
  if (typeof value !== "object" || value === null) return undefined;
  const { first, last, count } = value as { [key: string]: unknown };
  if (typeof first !== "string" || typeof last !== "string" || typeof count !== "number") return undefined;
  return { first, last, count };
}

/** The tables as one XLSX workbook, a sheet each. Throws LinkTrouble. */
export async function makeWorkbook(tables: readonly Sheet[], fetcher: Fetch = direct): Promise<Blob> {
  let made: Blob | undefined;
  /** What the workbook is taken out of before the answer is read as JSON. */
  const taking: Fetch = async (url, init) => {
    const response = await fetcher(url, init);
    if (!response.ok || !(response.headers.get("content-type") ?? "").startsWith(XLSX)) return response;
    made = await response.blob();
    return new Response("{}", { headers: { "content-type": "application/json", asfound: "1" } });
  };
  const headers = { "content-type": "application/json" };
  const init = { method: "POST", headers, body: JSON.stringify({ tables }) };
  await ask(taking, "/api/tables.xlsx", init, words.noWorkbook);
  if (!made) throw garbled();
  return made;
}

const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

type Body = { [key: string]: unknown };

async function ask(fetcher: Fetch, url: string, init: RequestInit, unreached: string): Promise<Body>;
async function ask(
  fetcher: Fetch,
  url: string,
  init: RequestInit,
  unreached: string,
  orNone: true,
): Promise<Body | undefined>;
async function ask(
  fetcher: Fetch,
  url: string,
  init: RequestInit,
  unreached: string,
  orNone = false,
): Promise<Body | undefined> {
  let answer: Awaited<ReturnType<typeof call>>;
  try {
    answer = await call(fetcher, url, { signal: AbortSignal.timeout(TIME_LIMIT_MS), ...init });
  } catch (cause) {
    if (!(cause instanceof Trouble)) throw cause;
    throw new LinkTrouble(codeOf(cause), whyNot(cause, unreached));
  }
  const { status, body } = answer;
  if (status < 300) return body;
  if (status === 404 && orNone) return undefined;
  throw new LinkTrouble(status === 409 ? "made" : "refused", whyRefused(status, body));
}

const codeOf = (trouble: Trouble): LinkTroubleCode =>
  trouble.kind === "conflict" ? "fault" : (trouble.kind as Exclude<Trouble["kind"], "conflict">);

/** Nobody tries again by itself here, so the sentences of syncing would not be true. */
function whyNot(trouble: Trouble, unreached: string): string {
  if (trouble.kind === "offline") return unreached;
  const code = codeOf(trouble);
  return code === "busy" || code === "unpaired" || code === "garbled" ? words[code] : words.fault;
}

/** In our own words where the server names a reason we know. */
function whyRefused(status: number, { code, message }: Body): string {
  if (code === "link-made") return words.made;
  if (code === "links-full") return words.full;
  if (code === "too-large" || code === "too-many") return words.tooLarge;
  if (code === "cut-off") return words.cutOff;
  return words.refused(typeof message === "string" ? message : words.said(status));
}

const garbled = (): LinkTrouble => new LinkTrouble("garbled", words.garbled);
