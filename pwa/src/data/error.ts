import { storeFaultWords } from "../words/data.ts";

export type DataErrorCode =
  | "quota"
  | "stuck"
  | "lost"
  | "outdated"
  | "blocked"
  | "unavailable"
  | "value"
  | "missing"
  | "photo"
  | "archive"
  | "unknown";

/** A failure of storing or reading, in words fit for the screen. */
export class DataError extends Error {
  // Not "DataError": Dexie takes errors of that name for the browser's own and replaces them.
  override readonly name = "StoreFault";
  constructor(
    readonly code: DataErrorCode,
    message: string,
    options?: { cause?: unknown },
  ) {
    super(message, options);
  }
}

export type StoreFault = keyof typeof storeFaultWords;

export const storeFault = (code: StoreFault, cause?: unknown): DataError =>
  new DataError(code, storeFaultWords[code], { cause });

/** Every name in the chain of causes: Dexie wraps the browser's errors in its own. */
function names(cause: unknown): string[] {
  const found: string[] = [];
  let next: unknown = cause;
  for (let depth = 0; depth < 6 && typeof next === "object" && next !== null; depth++) {
    const { name, inner, cause: deeper, message } = next as Record<string, unknown>;
    if (typeof name === "string") found.push(name);
    if (typeof message === "string")
      found.push(...message.split(/[^A-Za-z]+/).filter((w) => w.endsWith("Error")));
    next = inner ?? deeper;
  }
  return found;
}

const LOST = new Set(["DatabaseClosedError", "InvalidStateError", "UnknownError", "OpenFailedError"]);

/** Whatever the store threw, as a DataError. */
export function asDataError(cause: unknown): DataError {
  if (cause instanceof DataError) return cause;
  const all = names(cause);
  if (all.includes("QuotaExceededError")) return storeFault("quota", cause);
  if (all.includes("VersionError") || all.includes("VersionChangeError"))
    return storeFault("outdated", cause);
  if (all.includes("MissingAPIError") || all.includes("SecurityError"))
    return storeFault("unavailable", cause);
  if (all.some((name) => LOST.has(name))) return storeFault("lost", cause);
  if (all.includes("AbortError")) return storeFault("stuck", cause);
  return storeFault("unknown", cause);
}
