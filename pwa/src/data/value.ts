import { saveWords, valueWords } from "../words/data.ts";
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

/** Why a thing is no value. */
type Fault = { code: keyof typeof valueWords; kind: string };

const fault = (code: Fault["code"], kind = ""): Fault => ({ code, kind });

function valueFault(value: unknown, depth = 1): Fault | undefined {
  if (value === null || typeof value === "boolean") return undefined;
  if (typeof value === "number") return Number.isFinite(value) ? undefined : fault("infinite");
  if (typeof value === "string") return textFault(value);
  if (typeof value !== "object") return fault("noJson", typeof value);
  if (depth > MAX_DEPTH) return fault("deep");
  for (const [key, member] of Object.entries(value)) {
    const found = textFault(key) ?? valueFault(member, depth + 1);
    if (found) return found;
  }
  return undefined;
}

function textFault(text: string): Fault | undefined {
  if (text.includes("\u0000")) return fault("nul");
  return text.search(LONE_SURROGATE) >= 0 ? fault("half") : undefined;
}

function said({ code, kind }: Fault): string {
  if (code === "noJson") return valueWords.noJson(kind);
  return code === "deep" ? valueWords.deep(MAX_DEPTH) : valueWords[code];
}

/** Says why an unknown thing is not a value, or undefined when it is one. */
export function valueProblem(value: unknown): string | undefined {
  const found = valueFault(value);
  return found && said(found);
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
  const found = valueFault(value === undefined ? null : stripUndefined(value));
  if (found && found.code !== "nul" && found.code !== "half") {
    throw new DataError("value", saveWords.badValue(path, said(found)));
  }
  const cleaned = clean(value);
  const bytes = byteLength(canonical(cleaned));
  if (bytes > MAX_VALUE_BYTES) {
    throw new DataError("value", saveWords.tooLong(path, Math.ceil(bytes / 1024), MAX_VALUE_BYTES / 1024));
  }
  return cleaned;
}

function stripUndefined(value: JsonInput): unknown {
  if (value === null || typeof value !== "object" || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).filter(([, member]) => member !== undefined));
}
