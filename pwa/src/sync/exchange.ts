/** One round with the server: push what is not there yet, take what is new. */
import type { Store } from "../data/db.ts";
import { readSync } from "../data/meta.ts";
import { type Row, readRow } from "../data/row.ts";
import { serverWords } from "../words/server.ts";
import { applyReply, park, type Refused, type Reply, repushAfter } from "./apply.ts";
import { type Batch, MAX_ROWS, nextBatch } from "./batch.ts";
import { type Answer, call, type Fetch, garbled, Trouble } from "./http.ts";
import { rekey, restamp } from "./recover.ts";

export interface Round {
  /** Nothing is left to push or to fetch. */
  done: boolean;
  /** The server objected to this device's stamps; they were put right and must be sent again. */
  again?: boolean;
  /** What the user should be told once. */
  notice?: string;
}

const WANT_ROWS = 500;

/** Resolves after one answer was taken in; throws Trouble when it must be tried again later. */
export async function exchange(store: Store, fetcher: Fetch, limit = MAX_ROWS): Promise<Round> {
  const batch = await nextBatch(store, limit);
  const { rows } = batch;
  const asked = Date.now();
  const { status, body } = await push(fetcher, batch);
  const middle = (asked + Date.now()) / 2;
  if (status === 200) {
    const reply = readReply(body);
    await applyReply(store, batch, reply, Math.round(reply.now - middle));
    return { done: batch.last && !reply.more };
  }
  if (status === 409) return conflict(store, body, middle);
  if (status === 400 && body.code === "cut-off") throw new Trouble("offline", serverWords.cutOff);
  if (status === 400 || status === 413 || status === 422) {
    const reason = textIn(body.message) ?? serverWords.refusedWith(status);
    const half = Math.floor(rows.length / 2);
    if (half >= 1) return { ...(await exchange(store, fetcher, half)), done: false };
    // Is it this row, or will the server not read anything from this app?
    if (rows.length === 0 || (await push(fetcher, { ...batch, rows: [] })).status !== 200) {
      throw new Trouble("garbled", serverWords.stranger(reason));
    }
    return setAside(store, batch, reason);
  }
  throw garbled();
}

function push(fetcher: Fetch, { device, cursor, mark, rows }: Batch): Promise<Answer> {
  return call(fetcher, "/api/sync", {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify({ device, cursor, mark, rows, want: WANT_ROWS }),
  });
}

async function conflict(store: Store, body: { [key: string]: unknown }, middle: number): Promise<Round> {
  if (body.code === "clock-ahead" && isCount(body.now)) {
    const moved = await restamp(store, body.now, Math.round(body.now - middle));
    const notice = moved > 0 ? { notice: serverWords.clockAhead } : {};
    return { done: false, again: true, ...notice };
  }
  if (body.code === "device-reused") {
    await rekey(store);
    return { done: false, again: true };
  }
  throw new Trouble("conflict", textIn(body.message) ?? serverWords.conflict);
}

/** The one row that the server will not read at all. */
async function setAside(store: Store, batch: Batch, reason: string): Promise<Round> {
  await store.write(["meta", "parked"], async () => {
    await park(
      store,
      batch,
      batch.rows.map(({ doc, path }) => ({ doc, path, stamp: "", reason })),
    );
    const sync = await readSync(store);
    await store.meta.put({ ...sync, repush: repushAfter(sync, batch) });
  });
  return { done: false };
}

const textIn = (value: unknown): string | undefined =>
  typeof value === "string" && value !== "" ? value.slice(0, 500) : undefined;

const isCount = (value: unknown): value is number =>
  typeof value === "number" && Number.isSafeInteger(value) && value >= 0;

/** Checks the answer before anything of it is kept. A row that does not read is left out; its cursor passes on. */
function readReply(body: { [key: string]: unknown }): Reply {
  const { now, epoch, seq } = body;
  if (!isCount(now) || typeof epoch !== "string" || epoch === "" || !isCount(seq)) throw garbled();
  if (!Array.isArray(body.rows ?? []) || !Array.isArray(body.refused ?? [])) throw garbled();
  const rows = ((body.rows ?? []) as unknown[])
    .map((thing) => readRow(thing).row)
    .filter((row): row is Row => !!row);
  const refused = ((body.refused ?? []) as unknown[]).map(readRefused).filter((one): one is Refused => !!one);
  return { now, epoch, seq, more: body.more === true, reread: body.reread === true, refused, rows };
}

function readRefused(thing: unknown): Refused | undefined {
  if (typeof thing !== "object" || thing === null) return undefined;
  const { doc, path, stamp, reason } = thing as Record<string, unknown>;
  if (typeof doc !== "string" || typeof path !== "string" || typeof stamp !== "string") return undefined;
  return { doc, path, stamp, reason: textIn(reason) ?? serverWords.refused };
}
