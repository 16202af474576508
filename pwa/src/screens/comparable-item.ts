import { integerOf, isRecord, quantityOf, textOf } from "../data/shape.ts";
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
  const [title, price, basis] = [textOf(value.title), integerOf(value.price), textOf(value.basis)];
  if (title === undefined || price === undefined || basis === undefined) return undefined;
  const [made, capacity, distance] = [
    integerOf(value.made),
    quantityOf(value.capacity),
    quantityOf(value.distance),
  ];
  const item: Item = { id, kind: textOf(value.kind) ?? "", title, price, basis };
  for (const name of ["date", "condition", "place", "seen"] as const) {
    const text = textOf(value[name]);
    if (text) item[name] = text;
  }
  if (made) item.made = made;
  if (capacity) item.capacity = capacity;
  if (distance) item.distance = distance;
  if (value.off === true) item.off = true;
  return item;
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
