/** For tests: a server of the contract in memory, with faults to order. */
import { FUTURE_BOUND_MS, isStamp, stampDevice, stampMs } from "../data/clock.ts";
import { sha256 } from "../data/photo.ts";
import { type Entry, emptyRow, merge, type Row, readRow, rowKey, rowText, stampsOf } from "../data/row.ts";
import { canonical } from "../data/value.ts";
import type { Fetch } from "./http.ts";

interface State {
  rows: Map<string, { row: Row; seq: number }>;
  seq: number;
  runs: { epoch: string; first: number }[];
  highest: Map<string, string>;
  photos: Map<string, Uint8Array>;
  whole: Set<string>;
}

export class FakeServer {
  private state: State = {
    rows: new Map(),
    seq: 0,
    runs: [],
    highest: new Map(),
    photos: new Map(),
    whole: new Set(),
  };
  private epochs = 0;
  now: () => number = Date.now;
  pageRows = 500;
  /** Doc|path refused with this reason. */
  refuse = new Map<string, string>();
  requests: { url: string; rows: number; bytes: number }[] = [];
  /** Carries the request out, then loses the answer. */
  loseAnswers = 0;
  /** Answers instead of the server. */
  instead: ((url: string) => Response) | undefined;

  constructor() {
    this.restart();
  }

  restart(): void {
    this.state.runs.push({ epoch: `run-${++this.epochs}`, first: this.state.seq });
  }

  backup(): State {
    return structuredClone(this.state);
  }

  restore(backup: State): void {
    this.state = structuredClone(backup);
    this.restart();
  }

  texts(): string[] {
    return [...this.state.rows.values()].map(({ row }) => rowText(row)).sort();
  }

  row(doc: string, path: string): Row | undefined {
    return this.state.rows.get(rowKey(doc, path))?.row;
  }

  hasPhoto = (hash: string): boolean => this.state.whole.has(hash);

  fetch: Fetch = async (url, init) => {
    const body = init?.body;
    this.requests.push({ url, rows: 0, bytes: typeof body === "string" ? body.length : 0 });
    if (this.instead) return this.instead(url);
    const response = url === "/api/sync" ? this.sync(String(body)) : await this.photo(url, init ?? {});
    if (this.loseAnswers > 0) {
      this.loseAnswers--;
      throw new TypeError("connection lost");
    }
    return response;
  };

  private sync(text: string): Response {
    const { device, cursor, mark, rows, want } = JSON.parse(text);
    const last = this.requests.at(-1);
    if (last) last.rows = rows.length;
    const now = this.now();
    if (text.length > 1024 * 1024 || rows.length > 500)
      return json(413, { code: "too-large", message: "at most 1 MiB and 500 rows" });
    if (mark !== "" && stampDevice(mark) !== device) {
      return json(422, { code: "field", message: "mark: a stamp of the sending device itself is expected" });
    }
    const read: Row[] = [];
    const refused: unknown[] = [];
    for (const thing of rows) {
      const { row, refused: bad } = readRow(thing);
      for (const one of bad) refused.push({ doc: thing.doc, path: thing.path, ...one });
      const reason = row && this.refuse.get(rowKey(row.doc, row.path));
      if (row && reason)
        refused.push({ doc: row.doc, path: row.path, stamp: row.entries[0]?.stamp ?? "", reason });
      else if (row) read.push(row);
    }
    for (const stamp of stampsOf(read)) {
      if (stampMs(stamp) > now + FUTURE_BOUND_MS)
        return json(409, { code: "clock-ahead", now, message: "ahead" });
    }
    const pushed = new Set(read.flatMap((row) => row.entries.map((entry) => entry.stamp)));
    const highest = this.state.highest.get(device) ?? "";
    if ((highest > mark && !pushed.has(highest)) || read.some((row) => this.clashes(row))) {
      return json(409, { code: "device-reused", now, message: "reused" });
    }
    const sent = new Map(read.map((row) => [rowKey(row.doc, row.path), this.take(row)]));
    const run = this.state.runs.findIndex((one) => one.epoch === cursor.epoch);
    const end = this.state.runs[run + 1]?.first ?? this.state.seq;
    const valid = run >= 0 && cursor.seq <= end;
    const from = valid ? cursor.seq : 0;
    const changed = [...this.state.rows]
      .filter(([, held]) => held.seq > from)
      .sort((a, b) => a[1].seq - b[1].seq);
    const page = changed.slice(0, Math.min(want, this.pageRows));
    const rowsOut = page
      .filter(([key, held]) => sent.get(key) !== rowText(held.row))
      .map(([, held]) => held.row);
    return json(200, {
      now,
      epoch: this.state.runs.at(-1)?.epoch,
      seq: page.at(-1)?.[1].seq ?? this.state.seq,
      more: changed.length > page.length,
      reread: !valid,
      refused,
      rows: rowsOut,
    });
  }

  private clashes(row: Row): boolean {
    const held = this.row(row.doc, row.path)?.entries ?? [];
    const differs = (a: Entry, b: Entry) => a.stamp === b.stamp && canonical(a.value) !== canonical(b.value);
    return row.entries.some((entry) => held.some((other) => differs(entry, other)));
  }

  /** Gives the text of the row as it was sent. */
  private take(row: Row): string {
    const key = rowKey(row.doc, row.path);
    const held = this.state.rows.get(key)?.row ?? emptyRow(row.doc, row.path);
    const merged = merge(held, row);
    if (rowText(merged) !== rowText(held) || !this.state.rows.has(key)) {
      this.state.rows.set(key, { row: merged, seq: ++this.state.seq });
    }
    for (const { stamp } of row.entries) {
      if (!isStamp(stamp)) throw new Error("a bad stamp got past the door");
      const device = stampDevice(stamp);
      if (stamp > (this.state.highest.get(device) ?? "")) this.state.highest.set(device, stamp);
    }
    return rowText(row);
  }

  private async photo(url: string, init: RequestInit): Promise<Response> {
    const hash = url.split("/")[3] ?? "";
    const held = this.state.photos.get(hash) ?? new Uint8Array();
    const whole = this.state.whole.has(hash);
    if (url.endsWith("/have")) return json(200, { have: held.length, whole });
    if (init.method !== "PUT") {
      if (!whole) return json(404, { code: "missing", message: "no such photo" });
      return new Response(held as BufferSource, { headers: { "content-type": "image/jpeg", asfound: "1" } });
    }
    const offset = Number(new Headers(init.headers).get("upload-offset"));
    const chunk = new Uint8Array(init.body as ArrayBuffer);
    const last = this.requests.at(-1);
    if (last) last.bytes = chunk.length;
    if (offset !== held.length)
      return json(409, { code: "offset", have: held.length, whole, message: "wrong offset" });
    const joined = new Uint8Array([...held, ...chunk]);
    this.state.photos.set(hash, joined);
    if ((await sha256(joined)) === hash) this.state.whole.add(hash);
    return json(200, { have: joined.length, whole: this.state.whole.has(hash) });
  }
}

export function json(status: number, body: unknown, headers: Record<string, string> = {}): Response {
  return new Response(JSON.stringify(body), {
    status,
    headers: { "content-type": "application/json", asfound: "1", ...headers },
  });
}
