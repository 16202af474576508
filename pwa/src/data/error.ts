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

/** The one place for the words of faults of the store itself. */
const WORDS = {
  quota:
    "This device has no room left, so nothing was saved just now. Free some space (old photos, other apps) and save again; what you typed is still on the screen.",
  stuck: "Saving took too long and was given up; nothing was changed. Try again, or reload the page.",
  lost: "The connection to this device's storage was lost. What you typed is still on the screen: reload the page and enter it again if it is missing.",
  outdated: "A newer version of the app is open in another tab. Reload this page to go on.",
  blocked: "Another tab holds an older version of the app. Close the other tabs, then reload this page.",
  unavailable:
    "This browser does not let the app keep anything (private window or a policy). All is lost when the page closes: save a backup file before that.",
  unknown: "Something went wrong while saving; nothing was changed. Try again, or reload the page.",
} as const;

export type StoreFault = keyof typeof WORDS;

export const storeFault = (code: StoreFault, cause?: unknown): DataError =>
  new DataError(code, WORDS[code], { cause });

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
