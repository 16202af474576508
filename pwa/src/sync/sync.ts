/** When to sync, and what to say of it. The work of one round is in exchange.ts and photos.ts. */
import { current, onDataState, type Store } from "../data/db.ts";
import { DataError } from "../data/error.ts";
import { aloneOrNot } from "../data/lock.ts";
import { readSync } from "../data/meta.ts";
import { pendingRows, watch } from "../data/read.ts";
import { onSave } from "../data/saved.ts";
import { serverWords } from "../words/server.ts";
import { exchange } from "./exchange.ts";
import { type Fetch, Trouble } from "./http.ts";
import { downloadPhotos, photosToSend, uploadPhotos } from "./photos.ts";
import { waitAfter } from "./wait.ts";

export interface SyncStatus {
  /** saved-here: no server known; waiting: something is not on the server yet; on-server: all is. */
  phase: "saved-here" | "waiting" | "on-server";
  /** Rows not yet acknowledged. */
  pending: number;
  photosPending: number;
  /** Entries and photos the server refused; see parked() in data/read.ts. */
  parked: number;
  /** ms since epoch of the last good answer, ever. */
  lastContact?: number;
  /** In the user's words, when the last try failed for a reason he can act on. */
  problem?: string;
  /** To be told once: the clock of this device was ahead and has been corrected for. */
  notice?: string;
  serverSeen: boolean;
  /** A round is going on now, in this tab. */
  busy: boolean;
}

const LOCK = "asfound-sync";
const AFTER_SAVE_MS = 2_000;
const REGULAR_MS = 30_000;
/** Rounds in one go; a healthy exchange ends by itself long before. */
const MAX_ROUNDS = 10_000;
const MAX_CONFLICTS = 4;
/** Photos the server had not got are asked for again after this, ms. */
const ABSENT_MS = 600_000;

let status: SyncStatus = {
  phase: "saved-here",
  pending: 0,
  photosPending: 0,
  parked: 0,
  serverSeen: false,
  busy: false,
};
const listeners = new Set<(status: SyncStatus) => void>();

export const syncStatus = (): SyncStatus => status;

/** Called at once and at each change. Returns the unsubscriber. */
export function onSyncStatus(listener: (status: SyncStatus) => void): () => void {
  listeners.add(listener);
  listener(status);
  return () => listeners.delete(listener);
}

function tell(change: { [K in keyof SyncStatus]?: SyncStatus[K] | undefined }): void {
  const merged = Object.entries({ ...status, ...change }).filter(([, value]) => value !== undefined);
  status = Object.fromEntries(merged) as unknown as SyncStatus;
  for (const listener of listeners) listener(status);
}

interface Counts {
  pending: number;
  photosPending: number;
  parked: number;
  lastContact?: number;
  serverSeen: boolean;
  phase: SyncStatus["phase"];
}

/** Derived from the data alone, whichever tab did the syncing. */
function countOutstanding(store: Store): Promise<Counts> {
  return store.read(["rows", "meta", "parked", "photos"], async () => {
    const sync = await readSync(store);
    const pending = (await pendingRows(store)).length;
    const photosPending = await photosToSend(store);
    const refusedPhotos = await store.photos.filter((photo) => photo.refused !== undefined).count();
    const parked = (await store.parked.count()) + refusedPhotos;
    const serverSeen = sync.contact > 0;
    const open = pending > 0 || photosPending > 0 || sync.repush !== null;
    const phase = !serverSeen ? "saved-here" : open ? "waiting" : "on-server";
    return {
      pending,
      photosPending,
      parked,
      serverSeen,
      phase,
      ...(serverSeen ? { lastContact: sync.contact } : {}),
    };
  });
}

let fetcher: Fetch = (url, init) => fetch(url, init);
let failures = 0;
/** No try before this, ms since epoch: the server asked for it. */
let notBefore = 0;
let timer: ReturnType<typeof setTimeout> | undefined;
/** Something was saved since the last round began. */
let fresh = false;
let running: Promise<void> | undefined;
let started = false;
const absent = new Set<string>();
let absentSince = 0;

/** Starts syncing in the background. Returns the stopper. Call after openData(). */
export function startSync(options: { fetch?: Fetch } = {}): () => void {
  if (options.fetch) fetcher = options.fetch;
  started = true;
  const atOnce = () => {
    failures = 0;
    schedule(0);
  };
  const seen = () => {
    if (document.visibilityState === "visible") atOnce();
  };
  const stops = [
    onSave(() => {
      fresh = true;
      schedule(AFTER_SAVE_MS);
    }),
    watchCounts(),
    listen("window", "online", atOnce),
    listen("document", "visibilitychange", seen),
  ];
  schedule(0);
  return () => {
    started = false;
    clearTimeout(timer);
    for (const stop of stops) stop();
  };
}

/** Follows the store, also when another one takes its place. */
function watchCounts(): () => void {
  const start = () =>
    watch(
      () => countOutstanding(current()),
      tell,
      () => undefined,
    );
  let stop = start();
  const off = onDataState(() => {
    stop();
    stop = start();
  });
  return () => {
    off();
    stop();
  };
}

function listen(where: "window" | "document", event: string, act: () => void): () => void {
  const target: EventTarget | undefined =
    where === "window"
      ? typeof window === "undefined"
        ? undefined
        : window
      : typeof document === "undefined"
        ? undefined
        : document;
  target?.addEventListener(event, act);
  return () => target?.removeEventListener(event, act);
}

function schedule(ms: number): void {
  if (!started) return;
  clearTimeout(timer);
  timer = setTimeout(() => void syncNow(), Math.max(ms, notBefore - Date.now()));
}

/** Tries at once ("check now"). */
export async function syncNow(): Promise<SyncStatus> {
  running ??= attempt().finally(() => {
    running = undefined;
  });
  await running;
  return status;
}

async function attempt(): Promise<void> {
  tell({ busy: true });
  let wait = REGULAR_MS;
  try {
    const store = current();
    await aloneOrNot(LOCK, () => runAll(store));
    failures = 0;
    notBefore = 0;
    tell({ problem: undefined });
  } catch (cause) {
    wait = waitAfter(failures++, Math.random());
    if (cause instanceof Trouble && cause.retryAfter !== undefined) {
      wait = Math.max(wait, cause.retryAfter);
      notBefore = Date.now() + cause.retryAfter;
    }
    tell({ problem: problemIn(cause) });
  }
  tell({ ...(await countOutstanding(current()).catch(() => ({}))), busy: false });
  schedule(fresh ? Math.min(wait, AFTER_SAVE_MS * 2 ** Math.min(failures, 8)) : wait);
}

/** Being out of reach is no problem to tell: the phase says it. */
function problemIn(cause: unknown): string | undefined {
  if (cause instanceof Trouble) return cause.kind === "offline" ? undefined : cause.message;
  if (cause instanceof DataError) return cause.message;
  return serverWords.unknown;
}

/** Entries first, then photos; entries saved meanwhile go before the next chunk of a photo. */
async function runAll(store: Store): Promise<void> {
  if (Date.now() - absentSince > ABSENT_MS) {
    absent.clear();
    absentSince = Date.now();
  }
  for (let more = true; more; ) {
    await runRounds(store);
    tell(await countOutstanding(store));
    // The count is live over all tabs; the flag is quicker in this one.
    const interrupted = () => fresh || status.pending > 0;
    more =
      !(await uploadPhotos(store, fetcher, interrupted)) ||
      !(await downloadPhotos(store, fetcher, interrupted, absent));
  }
}

async function runRounds(store: Store): Promise<void> {
  let conflicts = 0;
  for (let round = 0; round < MAX_ROUNDS; round++) {
    fresh = false;
    const { done, again, notice } = await exchange(store, fetcher);
    if (notice) tell({ notice });
    if (again && ++conflicts > MAX_CONFLICTS) {
      throw new Trouble("conflict", serverWords.timesRefused);
    }
    if (done) return;
  }
}

/** For tests: another network, and everything forgotten but the store. */
export async function resetSync(next: Fetch): Promise<void> {
  await running;
  fetcher = next;
  failures = 0;
  notBefore = 0;
  fresh = false;
  absent.clear();
  status = { phase: "saved-here", pending: 0, photosPending: 0, parked: 0, serverSeen: false, busy: false };
}
