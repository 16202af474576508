/** What a device or the server really holds, read past the screens. */
import type { Page } from "@playwright/test";

interface Entry {
  value: unknown;
  stamp: string;
  base: string;
  settles?: string[];
}
export interface Row {
  doc: string;
  path: string;
  entries: Entry[];
  seen: string[];
}

/** JSON with sorted keys: two replicas that hold the same give the same text. */
function text(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(text).join(",")}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const members = Object.entries(value)
    .filter(([, v]) => v !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${members.map(([k, v]) => `${JSON.stringify(k)}:${text(v)}`).join(",")}}`;
}

const same = (rows: Row[]): string =>
  rows
    .map(({ doc, path, entries, seen }) => text({ doc, path, entries, seen }))
    .sort()
    .join("\n");

/** A whole table of the device's store. */
export function table<T>(page: Page, name: string): Promise<T[]> {
  return page.evaluate(
    (store) =>
      new Promise<never[]>((done, fail) => {
        const opening = indexedDB.open("asfound");
        opening.onerror = () => fail(opening.error);
        opening.onsuccess = () => {
          const all = opening.result.transaction(store).objectStore(store).getAll();
          all.onerror = () => fail(all.error);
          all.onsuccess = () => {
            opening.result.close();
            done(all.result as never[]);
          };
        };
      }),
    name,
  );
}

/** All rows of the device as one text, to compare. */
export const held = async (page: Page): Promise<string> => same(await table<Row>(page, "rows"));

/** All rows of the server as one text, as a new device would get them. */
export async function heldByServer(url: string): Promise<string> {
  const rows: Row[] = [];
  let cursor = { epoch: "", seq: 0 };
  for (let more = true; more; ) {
    const response = await fetch(`${url}/api/sync`, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify({ device: "00000000000000e1", cursor, mark: "", rows: [], want: 500 }),
    });
    const answer = (await response.json()) as { epoch: string; seq: number; more: boolean; rows?: Row[] };
    if (!response.ok) throw new Error(`the server answered ${response.status}: ${JSON.stringify(answer)}`);
    rows.push(...(answer.rows ?? []));
    cursor = { epoch: answer.epoch, seq: answer.seq };
    more = answer.more;
  }
  return same(rows);
}

/** The value that counts at a path on this device; undefined where there is none. */
export async function valueAt(page: Page, doc: string, path: string): Promise<unknown> {
  const rows = await table<Row>(page, "rows");
  return rows.find((r) => r.doc === doc && r.path === path)?.entries.at(-1)?.value;
}

/** The highest own stamp that this device believes to be on the server. */
export async function mark(page: Page): Promise<string> {
  const meta = await table<{ key: string; mark?: string }>(page, "meta");
  return meta.find((m) => m.key === "sync")?.mark ?? "";
}
