/**
 * What the list of listings shows of one, derived from its rows in the transaction that changes them, so that the
 * list never reads thousands of findings and photos. Nothing here is truth: it can be derived again at any time.
 */
import type { Quantity, RubricRef } from "../generated/types.ts";
import { endOfMs, stampMs } from "./clock.ts";
import type { Store, StoredRow } from "./db.ts";
import { listingId } from "./id.ts";
import { type AnswerMark, answersOf } from "./links.ts";
import { rowValue, winner } from "./row.ts";
import { rubricMarkOf } from "./rubric-mark.ts";
import { integerOf, isRecord, quantityOf, rubricOf, textOf } from "./shape.ts";
import type { Json } from "./value.ts";

export interface ListingSummary {
  id: string;
  /** `listing:<id>` */
  doc: string;
  title: string;
  maker?: string;
  model?: string;
  serial?: string;
  made?: number;
  rubric?: RubricRef;
  capacity?: Quantity;
  place?: string;
  distance?: Quantity;
  /** cents */
  asking?: number;
  seller?: string;
  date?: string;
  note?: string;
  /** What the user said of where it stands; else the walkaround tells. */
  state?: string;
  /** Out of the list until it is brought back. */
  away: boolean;
  /** Id of the listing it was put together with. */
  into?: string;
  /** Hash of its oldest photo of the whole. */
  photo?: string;
  /** What sellers answered to its papers, the newest first. */
  answers?: AnswerMark[];
  /** Checks with a grade, or with a reason for none. */
  answered: number;
  deleted: boolean;
  /** Deleted, and something in it was changed later than that. */
  changedAfterDelete: boolean;
  /** Fields that were entered apart from each other. */
  conflicts: number;
  /** ms since epoch, newest change of anything in it. */
  changed: number;
  /** Newest stamp of what a verdict hangs on: kind, facts and findings. */
  judged: string;
}

const JUDGED = /^(?:rubric$|fact\/|finding\/)/;
/** That a seller looked is no change of the listing: it must not bring a deleted one back. */
const LOOKED = /^link\/[^/]+\/opened$/;
const ANSWER = /^finding\/[^/]+\/answer$/;

/** From all rows of one listing; undefined where nothing of it is left. */
export function headOf(doc: string, rows: readonly StoredRow[]): ListingSummary | undefined {
  const value = new Map<string, Json>();
  let [newest, judged] = ["", ""];
  let conflicts = 0;
  for (const row of rows) {
    const stamp = winner(row)?.stamp ?? "";
    if (stamp > newest && !LOOKED.test(row.path)) newest = stamp;
    if (stamp > judged && JUDGED.test(row.path)) judged = stamp;
    if (row.losers > 0) conflicts++;
    const now = rowValue(row);
    if (now !== null) value.set(row.path, now);
  }
  if (value.size === 0 && conflicts === 0) return undefined;
  const removal = rows.find((row) => row.path === "deleted");
  const deleted = value.get("deleted") === true;
  return {
    id: listingId(doc) ?? "",
    doc,
    title: textOf(value.get("title")) ?? "",
    ...told(value),
    away: isRecord(value.get("away")),
    answered: [...value.keys()].filter((path) => ANSWER.test(path)).length,
    deleted,
    changedAfterDelete: deleted && newest > ((removal && winner(removal)?.stamp) ?? ""),
    conflicts,
    changed: stampMs(newest === "" ? endOfMs(0) : newest),
    judged,
  };
}

type Told = Partial<Omit<ListingSummary, "id" | "doc" | "title">>;

function told(value: ReadonlyMap<string, Json>): Told {
  const text = (path: string) => textOf(value.get(path));
  const state = value.get("state");
  const away = value.get("away");
  const all: { [K in keyof Told]: Told[K] | undefined } = {
    maker: text("maker"),
    model: text("model"),
    serial: text("serial"),
    made: integerOf(value.get("made")),
    rubric: rubricMarkOf(value.get("rubric")) ?? rubricOf(value.get("rubric")),
    capacity: quantityOf(value.get("capacity")),
    place: text("place"),
    distance: quantityOf(value.get("distance")),
    asking: integerOf(value.get("asking")),
    seller: text("seller"),
    date: text("date"),
    note: text("note"),
    state: isRecord(state) ? textOf(state.state) : undefined,
    into: isRecord(away) ? textOf(away.into) : undefined,
    photo: oldestPhoto(value),
    answers: answerMarks(value),
  };
  return Object.fromEntries(Object.entries(all).filter(([, one]) => one !== undefined)) as Told;
}

function answerMarks(value: ReadonlyMap<string, Json>): AnswerMark[] | undefined {
  const answers = answersOf(value).map(({ path, at }) => ({ path, at }));
  return answers.length > 0 ? answers : undefined;
}

const PHOTO = /^photo\/([^/]+)$/;

function oldestPhoto(value: ReadonlyMap<string, Json>): string | undefined {
  let oldest: { hash: string; at: string } | undefined;
  for (const [path, photo] of value) {
    const hash = PHOTO.exec(path)?.[1];
    if (hash === undefined) continue;
    const at = (isRecord(photo) ? textOf(photo.at) : undefined) ?? "";
    if (!oldest || at < oldest.at || (at === oldest.at && hash < oldest.hash)) oldest = { hash, at };
  }
  return oldest?.hash;
}

/** Stores rows, and the heads of the listings they belong to. In a transaction that holds `rows` and `heads`. */
export async function putRows(store: Store, rows: readonly StoredRow[]): Promise<void> {
  if (rows.length === 0) return;
  await store.rows.bulkPut(rows);
  await deriveHeads(store, new Set(rows.map((row) => row.doc)));
}

/** Every row of a document, by its key, which is quicker than by an index. */
export const rowsOf = (store: Pick<Store, "rows">, doc: string, prefix = ""): Promise<StoredRow[]> =>
  store.rows.where("key").between(`${doc}|${prefix}`, `${doc}|${prefix}\uffff`, true, false).toArray();

export async function deriveHeads(
  store: Pick<Store, "rows" | "heads">,
  docs: Iterable<string>,
): Promise<void> {
  const put: ListingSummary[] = [];
  const gone: string[] = [];
  for (const doc of docs) {
    if (listingId(doc) === undefined) continue;
    const head = headOf(doc, await rowsOf(store, doc));
    if (head) put.push(head);
    else gone.push(doc);
  }
  if (put.length > 0) await store.heads.bulkPut(put);
  if (gone.length > 0) await store.heads.bulkDelete(gone);
}
