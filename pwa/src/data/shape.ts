/** Reading values of rows as what they should be; undefined for anything else. */
import type { Quantity, Range, RubricRef } from "../generated/types.ts";
import type { Json } from "./value.ts";

type Maybe = Json | undefined;

export const isRecord = (value: unknown): value is { [key: string]: Json } =>
  typeof value === "object" && value !== null && !Array.isArray(value);

export const textOf = (value: Maybe): string | undefined => (typeof value === "string" ? value : undefined);

export const numberOf = (value: Maybe): number | undefined =>
  typeof value === "number" && Number.isFinite(value) ? value : undefined;

export const integerOf = (value: Maybe): number | undefined =>
  typeof value === "number" && Number.isSafeInteger(value) ? value : undefined;

export function quantityOf(value: Maybe): Quantity | undefined {
  if (!isRecord(value)) return undefined;
  const n = numberOf(value.n);
  const unit = textOf(value.unit);
  return n === undefined || unit === undefined ? undefined : { n, unit };
}

/** Three amounts in cents, in rising order. */
export function rangeOf(value: Maybe): Range | undefined {
  if (!isRecord(value)) return undefined;
  const low = integerOf(value.low);
  const likely = integerOf(value.likely);
  const high = integerOf(value.high);
  if (low === undefined || likely === undefined || high === undefined) return undefined;
  return low >= 0 && low <= likely && likely <= high ? { low, likely, high } : undefined;
}

export function rubricOf(value: Maybe): RubricRef | undefined {
  if (!isRecord(value)) return undefined;
  const id = textOf(value.id);
  const version = integerOf(value.version);
  return id === undefined || version === undefined ? undefined : { id, version };
}

/** A map of which every member must read; the names of those that do not go to `bad`. */
export function mapOf<T>(
  value: Maybe,
  read: (member: Maybe) => T | undefined,
  bad: (name: string) => void,
): Record<string, T> | undefined {
  if (!isRecord(value)) return undefined;
  const out: Record<string, T> = {};
  for (const [name, member] of Object.entries(value)) {
    const found = read(member);
    if (found === undefined) bad(name);
    else out[name] = found;
  }
  return out;
}
