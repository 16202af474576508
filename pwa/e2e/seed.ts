/** Listings put on the server as another device would send them. */
import { readFileSync } from "node:fs";
import { resolve } from "node:path";

const demo = resolve(import.meta.dirname, "../../testdata/demo");

interface Finding {
  grade?: number;
  skipped?: string;
  measured?: unknown;
  words?: unknown;
  maker?: unknown;
  note?: string;
}
interface Appraisal {
  rubric: unknown;
  date: string;
  listing: Record<string, unknown>;
  facts?: Record<string, unknown>;
  ways?: Record<string, unknown>;
  landing?: Record<string, unknown>;
  findings?: Record<string, Finding>;
  comparables?: Record<string, unknown>[];
  new_price?: unknown;
}

export interface Seed {
  /** 26 characters. */
  id: string;
  /** A file of testdata/demo. */
  file: string;
  /** Put over what the file says of the listing. */
  listing?: Record<string, unknown>;
  /** false: nothing was graded yet. */
  findings?: boolean;
  comparables?: boolean;
}

export const listingId = (n: number): string => `0000000000000000000000ee${String(n).padStart(2, "0")}`;

type Field = [doc: string, path: string, value: unknown];

function fieldsOf(seed: Seed): Field[] {
  const a = JSON.parse(readFileSync(resolve(demo, `${seed.file}.json`), "utf8")) as Appraisal;
  const doc = `listing:${seed.id}`;
  const fields: Field[] = [
    [doc, "rubric", a.rubric],
    [doc, "date", a.date],
    ...Object.entries({ ...a.listing, ...seed.listing }).map(([k, v]): Field => [doc, k, v]),
    ...Object.entries(a.facts ?? {}).map(([k, v]): Field => [doc, `fact/${k}`, v]),
    ...Object.entries(a.ways ?? {}).map(([k, v]): Field => [doc, `way/${k}`, v]),
    ...Object.entries(a.landing ?? {}).map(([k, v]): Field => [doc, `landing/${k}`, v]),
  ];
  if (a.new_price) fields.push([doc, "newprice", a.new_price]);
  for (const [check, f] of Object.entries(seed.findings === false ? {} : (a.findings ?? {}))) {
    const at = `finding/${check}`;
    if (f.grade !== undefined) fields.push([doc, `${at}/answer`, { grade: f.grade }]);
    if (f.skipped) fields.push([doc, `${at}/answer`, { skipped: f.skipped }]);
    const { measured, words, maker } = f;
    if (measured) {
      const value = { quantities: measured, ...(words ? { words } : {}), ...(maker ? { maker } : {}) };
      fields.push([doc, `${at}/measured`, value]);
    }
    if (f.note) fields.push([doc, `${at}/note`, f.note]);
  }
  if (seed.comparables) {
    const kind = (a.rubric as { id: string }).id;
    (a.comparables ?? []).forEach((c, i) => {
      const id = `0000000000000000000000ec${String(i).padStart(2, "0")}`;
      fields.push(["comparables", `item/${id}`, { ...c, id, kind }]);
    });
  }
  return fields;
}

/** Puts listings on a running server. */
export async function seed(url: string, seeds: Seed[]): Promise<void> {
  const device = Math.floor(Math.random() * 2 ** 48)
    .toString(16)
    .padStart(16, "e");
  const time = Date.now().toString(16).padStart(12, "0");
  const rows = seeds.flatMap(fieldsOf).map(([doc, path, value], i) => {
    const stamp = `${time}${i.toString(16).padStart(4, "0")}${device}`;
    return { doc, path, entries: [{ value, stamp, base: "" }], seen: [] };
  });
  let mark = "";
  for (let from = 0; from < rows.length; from += 400) {
    const page = rows.slice(from, from + 400);
    const response = await fetch(`${url}/api/sync`, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify({ device, cursor: { epoch: "", seq: 0 }, mark, rows: page, want: 1 }),
    });
    const answer = (await response.json()) as { refused?: unknown[]; message?: string };
    if (!response.ok || (answer.refused ?? []).length > 0) {
      throw new Error(`the server did not take the demo: ${JSON.stringify(answer).slice(0, 500)}`);
    }
    mark = page.at(-1)?.entries[0]?.stamp ?? mark;
  }
}
