/** One call to the server, with every way it can fail told apart. */
import { isRecord } from "../data/shape.ts";
import { serverWords } from "../words/server.ts";

export type Fetch = (url: string, init?: RequestInit) => Promise<Response>;

export type TroubleKind =
  /** No server of ours answered: no network, a captive portal, another server. */
  | "offline"
  /** It asks to come back later. */
  | "busy"
  /** It does not know this device (any more). */
  | "unpaired"
  /** It has a fault. */
  | "fault"
  /** Its answer makes no sense to this app. */
  | "garbled"
  | "conflict";

export class Trouble extends Error {
  override readonly name = "Trouble";
  constructor(
    readonly kind: TroubleKind,
    message: string,
    /** ms to wait, where the server said so. */
    readonly retryAfter?: number,
  ) {
    super(message);
  }
}

export interface Answer {
  status: number;
  body: { [key: string]: unknown };
}

const TIME_LIMIT_MS = 30_000;
const MAX_RETRY_AFTER_MS = 3_600_000;

/** Resolves with what the server decided (2xx, 4xx); throws Trouble for everything that is to be tried again. */
export async function call(fetcher: Fetch, url: string, init: RequestInit = {}): Promise<Answer> {
  const response = await reach(fetcher, url, init);
  const { status } = response;
  if (status === 429 || status === 503) {
    throw new Trouble("busy", serverWords.busy, retryAfter(response));
  }
  requireOurs(response);
  const body = await readBody(response);
  if (status === 401 || status === 403) {
    throw new Trouble("unpaired", serverWords.unpaired);
  }
  if (status === 507) throw new Trouble("fault", serverWords.full);
  if (status >= 500) throw new Trouble("fault", serverWords.fault(status));
  return { status, body };
}

/** A picture: the one answer that is not JSON. undefined when the server has not got it, altered when it noticed that itself. */
export async function callForBytes(
  fetcher: Fetch,
  url: string,
): Promise<ArrayBuffer | "altered" | undefined> {
  const response = await reach(fetcher, url, {});
  if (response.status === 404) {
    const said: unknown = await response.json().catch(() => undefined);
    return isRecord(said) && said.code === "altered" ? "altered" : undefined;
  }
  if (response.status === 429 || response.status === 503) {
    throw new Trouble("busy", serverWords.busy, retryAfter(response));
  }
  if (!response.ok || !(response.headers.get("content-type") ?? "").startsWith("image/")) {
    throw new Trouble("offline", serverWords.noPicture);
  }
  try {
    return await response.arrayBuffer();
  } catch {
    throw offline();
  }
}

const offline = (): Trouble => new Trouble("offline", serverWords.none);

async function reach(fetcher: Fetch, url: string, init: RequestInit): Promise<Response> {
  try {
    return await fetcher(url, {
      credentials: "same-origin",
      cache: "no-store",
      redirect: "error",
      signal: AbortSignal.timeout(TIME_LIMIT_MS),
      ...init,
    });
  } catch {
    throw offline();
  }
}

/** A captive portal answers everything, with 200 and a page of its own. */
function requireOurs(response: Response): void {
  const json = (response.headers.get("content-type") ?? "").startsWith("application/json");
  if (response.headers.get("asfound") !== "1" || !json) throw offline();
}

async function readBody(response: Response): Promise<Answer["body"]> {
  let body: unknown;
  try {
    body = await response.json();
  } catch {
    // Cut off on the way.
    throw offline();
  }
  if (typeof body !== "object" || body === null || Array.isArray(body)) throw garbled();
  return body as Answer["body"];
}

export const garbled = (): Trouble => new Trouble("garbled", serverWords.garbled);

/** Seconds or a date (RFC 9110, section 10.2.3; from memory). */
function retryAfter(response: Response): number | undefined {
  const text = response.headers.get("retry-after");
  if (!text) return undefined;
  const ms = /^\d+$/.test(text) ? Number(text) * 1000 : Date.parse(text) - Date.now();
  return Number.isFinite(ms) ? Math.min(MAX_RETRY_AFTER_MS, Math.max(0, ms)) : undefined;
}
