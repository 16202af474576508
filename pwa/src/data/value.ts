import { DataError } from "./error.ts";

/** A value of a row: any JSON. null means removed. */
export type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

/** What callers may hand in: undefined members are dropped. */
export type JsonInput =
  | null
  | boolean
  | number
  | string
  | readonly JsonInput[]
  | { readonly [key: string]: JsonInput | undefined };

/** Bytes of the canonical text of one value. */
export const MAX_VALUE_BYTES = 64 * 1024;
const MAX_DEPTH = 16;

const encoder = new TextEncoder();
const LONE_SURROGATE = /[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;

export const byteLength = (text: string): number => encoder.encode(text).length;

/** Order of the UTF-8 bytes, which is the order of code points; plain `<` compares UTF-16 units instead. */
export function compareBytes(a: string, b: string): number {
  const shorter = Math.min(a.length, b.length);
  for (let i = 0; i < shorter; i++) {
    const x = a.charCodeAt(i);
    const y = b.charCodeAt(i);
    if (x === y) continue;
    const surrogate = x >= 0xd800 && y >= 0xd800;
    if (!surrogate) return x - y;
    return rank(x) - rank(y);
  }
  return a.length - b.length;
}

/** Surrogates stand for code points above all others. */
const rank = (unit: number): number => (unit < 0xe000 ? unit + 0x2000 : unit - 0x800);

/**
 * The one text of a value (RFC 8785): keys in the order of UTF-16 units, which is JavaScript's own; no spaces;
 * numbers and strings as JSON.stringify writes them.
 */
export function canonical(value: Json): string {
  if (value === null || typeof value !== "object") return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map(canonical).join(",")}]`;
  const keys = Object.keys(value).sort();
  return `{${keys.map((key) => `${JSON.stringify(key)}:${canonical(value[key] ?? null)}`).join(",")}}`;
}

export const sameValue = (a: Json, b: Json): boolean => canonical(a) === canonical(b);

/** Says why an unknown thing is not a value, or undefined when it is one. */
export function valueProblem(value: unknown, depth = 1): string | undefined {
  if (value === null || typeof value === "boolean") return undefined;
  if (typeof value === "number") return Number.isFinite(value) ? undefined : "is not a finite number";
  if (typeof value === "string") return textProblem(value);
  if (typeof value !== "object") return `is a ${typeof value}, not JSON`;
  if (depth > MAX_DEPTH) return `is nested deeper than ${MAX_DEPTH} levels`;
  for (const [key, member] of Object.entries(value)) {
    const problem = textProblem(key) ?? valueProblem(member, depth + 1);
    if (problem) return problem;
  }
  return undefined;
}

function textProblem(text: string): string | undefined {
  if (text.includes("\u0000")) return "contains a NUL character";
  return text.search(LONE_SURROGATE) >= 0 ? "contains half a character" : undefined;
}

const cleanText = (text: string): string => text.replaceAll("\u0000", "").replace(LONE_SURROGATE, "\uFFFD");

function clean(value: JsonInput): Json {
  if (typeof value === "string") return cleanText(value);
  // -0 and 0 are the same figure, and their texts must be the same too.
  if (typeof value === "number") return value === 0 ? 0 : value;
  if (value === null || typeof value !== "object") return value;
  if (Array.isArray(value)) return value.map((member: JsonInput) => clean(member));
  const out: { [key: string]: Json } = {};
  for (const [key, member] of Object.entries(value)) {
    if (member !== undefined) out[cleanText(key)] = clean(member as JsonInput);
  }
  return out;
}

/** A value fit to be kept; what no screen can show (NUL, half characters) is replaced. Throws DataError. */
export function cleanValue(path: string, value: JsonInput): Json {
  const problem = valueProblem(value === undefined ? null : stripUndefined(value));
  if (problem && !/NUL|half a character/.test(problem)) {
    throw new DataError("value", `"${path}" was not saved: its value ${problem}.`);
  }
  const cleaned = clean(value);
  const bytes = byteLength(canonical(cleaned));
  if (bytes > MAX_VALUE_BYTES) {
    throw new DataError(
      "value",
      `"${path}" was not saved: it is ${Math.ceil(bytes / 1024)} KiB long; at most ${MAX_VALUE_BYTES / 1024} KiB fit. Shorten the text.`,
    );
  }
  return cleaned;
}

function stripUndefined(value: JsonInput): unknown {
  if (value === null || typeof value !== "object" || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).filter(([, member]) => member !== undefined));
}
