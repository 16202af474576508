import { current, dataState } from "./db.ts";
import { onSave } from "./saved.ts";

export interface StorageState {
  /** stored: kept on the device; memory: gone when the page closes; closed: reload needed. */
  mode: "opening" | "stored" | "memory" | "closed";
  problem?: string;
  /** The browser promised not to throw the data away; undefined: not known. */
  persisted?: boolean;
  /** bytes */
  usage?: number;
  quota?: number;
  /** usage / quota >= 0.8 */
  nearlyFull: boolean;
  /** This browser kept data here before, and it is gone: the browser or somebody cleared it. */
  emptied: boolean;
}

const NEARLY_FULL = 0.8;
const COOKIE = "asfound_kept";

export async function storageState(): Promise<StorageState> {
  const { mode, problem } = dataState();
  const manager = storageManager();
  const persisted = await manager?.persisted?.().catch(() => undefined);
  const estimate = await manager?.estimate?.().catch(() => undefined);
  const { usage, quota } = estimate ?? {};
  return {
    mode,
    ...(problem ? { problem: problem.message } : {}),
    ...(persisted !== undefined && mode === "stored" ? { persisted } : {}),
    ...(usage !== undefined ? { usage } : {}),
    ...(quota !== undefined ? { quota } : {}),
    nearlyFull: usage !== undefined && quota !== undefined && quota > 0 && usage / quota >= NEARLY_FULL,
    emptied: mode === "stored" && (await emptied()),
  };
}

const storageManager = (): StorageManager | undefined =>
  typeof navigator === "undefined" ? undefined : (navigator.storage ?? undefined);

/** A cookie lives apart from the store: it tells an emptied store from a new one. */
async function emptied(): Promise<boolean> {
  if (typeof document === "undefined" || !document.cookie.split("; ").includes(`${COOKIE}=1`)) return false;
  const store = current();
  return store.read(["rows"], async () => (await store.rows.count()) === 0);
}

/** Asks the browser to keep the data, once, after the first save. Call at start; returns the unsubscriber. */
export function keepStorage(): () => void {
  const stop = onSave(() => {
    stop();
    if (dataState().mode !== "stored") return;
    if (typeof document !== "undefined") {
      // biome-ignore lint/suspicious/noDocumentCookie: the Cookie Store API is missing in most browsers.
      document.cookie = `${COOKIE}=1; Max-Age=31536000; Path=/; SameSite=Strict`;
    }
    void storageManager()
      ?.persist?.()
      .catch(() => false);
  });
  return stop;
}
