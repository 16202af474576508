/**
 * Rubrics of the shop's own, and the very rubrics that appraisals were made with.
 * The text of one stands in pieces under its own hash, so it never changes and needs
 * no merging; what is current of an own one is a single value beside it.
 */
import type { Rubric } from "../generated/types.ts";
import { current } from "./db.ts";
import { sha256 } from "./photo.ts";
import { rowKey, rowValue } from "./row.ts";
import { PIECE, type RubricMark, rubricMarkOf } from "./rubric-mark.ts";
import { isRecord, textOf } from "./shape.ts";
import type { Json } from "./value.ts";
import type { Change } from "./write.ts";

const rubricsDoc = "rubrics";

/** A rubric of the shop's own, as it is now. */
export interface OwnRubric {
  mark: RubricMark;
  rubric: Rubric;
}

const ownPath = (id: string) => `own/${id}`;
const piecePath = (hash: string, n: number) => `text/${hash}/${n}`;

const known = new Map<string, Rubric>();

/** The mark of a rubric, and what must be saved so that its text is kept. */
export async function keepRubric(rubric: Rubric): Promise<{ mark: RubricMark; changes: Change[] }> {
  const text = JSON.stringify(rubric);
  const hash = await sha256(new TextEncoder().encode(text));
  const pieces: string[] = [];
  for (let at = 0; at < text.length; at += PIECE) pieces.push(text.slice(at, at + PIECE));
  const kept = await keptPieces(hash, pieces.length);
  return {
    mark: { id: rubric.id, version: rubric.version, hash, pieces: pieces.length },
    changes: pieces.flatMap((value, n) =>
      kept[n] === value ? [] : [{ doc: rubricsDoc, path: piecePath(hash, n), value }],
    ),
  };
}

/** What makes a rubric the shop's current one of its id; a mark of null takes it off the list. */
export const ownChange = (id: string, mark: RubricMark | null): Change => ({
  doc: rubricsDoc,
  path: ownPath(id),
  value: mark && { ...mark },
});

async function keptPieces(hash: string, pieces: number): Promise<(string | undefined)[]> {
  const store = current();
  const keys = Array.from({ length: pieces }, (_, n) => rowKey(rubricsDoc, piecePath(hash, n)));
  const rows = await store.read(["rows"], () => store.rows.bulkGet(keys));
  return rows.map((row) => row && textOf(rowValue(row)));
}

/** The rubric of a mark; undefined where a piece has not arrived yet or the text is not the one its hash names. */
export async function keptRubric(mark: RubricMark): Promise<Rubric | undefined> {
  return known.get(mark.hash) ?? (await joined(mark, await keptPieces(mark.hash, mark.pieces)));
}

async function joined(mark: RubricMark, pieces: (string | undefined)[]): Promise<Rubric | undefined> {
  if (pieces.some((piece) => piece === undefined)) return undefined;
  const text = pieces.join("");
  if ((await sha256(new TextEncoder().encode(text))) !== mark.hash) return undefined;
  const rubric = rubricOfText(text);
  if (rubric) known.set(mark.hash, rubric);
  return rubric;
}

function rubricOfText(text: string): Rubric | undefined {
  try {
    const read: unknown = JSON.parse(text);
    return isRecord(read) && Array.isArray(read.sections) && typeof read.id === "string"
      ? (read as unknown as Rubric)
      : undefined;
  } catch {
    return undefined;
  }
}

/** The shop's own rubrics, by kind. Those whose text has not arrived yet are left out. */
export async function ownRubrics(): Promise<OwnRubric[]> {
  const marks: RubricMark[] = [];
  for (const [path, value] of await ownValues()) {
    const mark = rubricMarkOf(value);
    if (mark && ownPath(mark.id) === path) marks.push(mark);
  }
  // All is read before the first text is hashed: a live question hears of what it read itself.
  const texts: (string | undefined)[][] = [];
  for (const mark of marks) texts.push(known.has(mark.hash) ? [] : await keptPieces(mark.hash, mark.pieces));
  const found: OwnRubric[] = [];
  for (const [i, mark] of marks.entries()) {
    const rubric = known.get(mark.hash) ?? (await joined(mark, texts[i] ?? []));
    if (rubric) found.push({ mark, rubric });
  }
  return found.sort((a, b) => (a.rubric.kind < b.rubric.kind ? -1 : 1));
}

/** The heads alone: the texts are many times as long and are read by their keys. */
async function ownValues(): Promise<Map<string, Json>> {
  const store = current();
  const from = rowKey(rubricsDoc, ownPath(""));
  const rows = await store.read(["rows"], () => store.rows.where("key").startsWith(from).toArray());
  const values = new Map<string, Json>();
  for (const row of rows) {
    const value = rowValue(row);
    if (value !== null) values.set(row.path, value);
  }
  return values;
}
