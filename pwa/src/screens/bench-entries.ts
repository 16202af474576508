import { signal } from "@preact/signals";
import type { Quantity } from "../generated/types.ts";
import { type Measured, type Measuring, without } from "./use-measured.ts";

/** What was entered for one limit during this visit. */
export interface BenchEntry extends Measured {
  /** Fields whose text cannot be read as it stands. */
  unread: readonly string[];
  /** Counts how often the fields were filled or cleared at once: each time they start afresh. */
  round: number;
}

const none: BenchEntry = { quantities: {}, words: {}, unread: [], round: 0 };

/** By name of the limit; nothing of it is stored. */
const entries = signal<ReadonlyMap<string, BenchEntry>>(new Map());

export const benchEntry = (name: string): BenchEntry => entries.value.get(name) ?? none;

/** Whether anything was entered for the limit. */
export function hasEntries(name: string): boolean {
  const { quantities, words, maker, unread } = benchEntry(name);
  return (
    Object.keys(quantities).length + Object.keys(words).length + unread.length > 0 || maker !== undefined
  );
}

/** Fills all fields of a limit at once; without values it clears them. */
export function fillBench(name: string, measured: Measured = { quantities: {}, words: {} }): void {
  put(name, { ...measured, unread: [], round: benchEntry(name).round + 1 });
}

const put = (name: string, entry: BenchEntry) => {
  entries.value = new Map(entries.peek()).set(name, entry);
};

/** Keeps what is typed into the fields of a limit, as long as they are those of this round. */
export function benchMeasuring(name: string, round: number): Measuring {
  const change = async (field: string, next: (entry: BenchEntry) => Measured, unread = false) => {
    const entry = benchEntry(name);
    if (entry.round !== round) return undefined;
    const others = entry.unread.filter((f) => f !== field);
    put(name, { ...next(entry), unread: unread ? [...others, field] : others, round });
    return undefined;
  };
  const quantity = (entry: BenchEntry, field: string, value: Quantity | null): Measured => ({
    quantities: value ? { ...entry.quantities, [field]: value } : without(entry.quantities, field),
    words: entry.words,
    maker: entry.maker,
  });
  const maker = ({ quantities, words }: BenchEntry, value: Quantity | null): Measured => ({
    quantities,
    words,
    ...(value ? { maker: value } : {}),
  });
  return {
    quantity: (field, value) => change(field, (entry) => quantity(entry, field, value)),
    word: (field, value) =>
      change(field, ({ quantities, words, maker: own }) => ({
        quantities,
        words: value ? { ...words, [field]: value } : without(words, field),
        maker: own,
      })),
    maker: (value) => change("maker", (entry) => maker(entry, value)),
    unread: (field) =>
      void change(
        field,
        (entry) => (field === "maker" ? maker(entry, null) : quantity(entry, field, null)),
        true,
      ),
  };
}
