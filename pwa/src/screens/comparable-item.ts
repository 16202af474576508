import { comparableOf } from "../data/file-worth.ts";
import { isRecord, textOf } from "../data/shape.ts";
import type { Json, JsonInput } from "../data/value.ts";
import type { Comparable } from "../generated/types.ts";

/** A comparable as kept: one value, with the kind of equipment it belongs to. */
export interface Item extends Comparable {
  kind: string;
}

export const blankItem = (id: string, kind: string, today: string): Item => ({
  id,
  kind,
  title: "",
  price: 0,
  basis: "asked",
  date: today,
});

/** Reads a kept comparable; undefined where it is none. */
export function itemOf(id: string, value: Json): Item | undefined {
  if (!isRecord(value)) return undefined;
  const comparable = comparableOf(id, value);
  return comparable && { ...comparable, kind: textOf(value.kind) ?? "" };
}

/** The value to keep: empty members go, the id stands in the path. */
export function itemValue(item: Item): JsonInput {
  const { id: _, capacity, distance, ...rest } = item;
  const full = Object.entries(rest).filter(
    ([name, value]) =>
      ["title", "price"].includes(name) || (value !== undefined && value !== "" && value !== false),
  );
  return {
    ...Object.fromEntries(full),
    ...(capacity ? { capacity: { ...capacity } } : {}),
    ...(distance ? { distance: { ...distance } } : {}),
  };
}
