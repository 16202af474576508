/** What the parts of the compare screen share: a side with its listing, and the order they stand in. */
import type { Comparison, Side, Verdict } from "../generated/types.ts";

export interface Lettered {
  /** Index into the sides. */
  at: number;
  id: string;
  /** A, B, C in the order chosen, so that a letter stays when the ranking moves. */
  letter: string;
  side: Side;
}

/** What the pictures and the table need of a side: one of today, or one that a decision kept. */
export type Figures = Omit<Side, "verdict" | "parts"> & { verdict: Pick<Verdict, "title" | "hazard"> };

export interface Shown {
  id: string;
  letter: string;
  side: Figures;
}

/** All sides, best first as the engine ranks them. */
export function inOrder(comparison: Comparison, ids: readonly string[]): Lettered[] {
  return comparison.order.flatMap((at) => {
    const side = comparison.sides[at];
    const id = ids[at];
    return side && id !== undefined ? [{ at, id, letter: side.letter, side }] : [];
  });
}

/** A pair of which the first is more likely the worse one at its price, or has no price yet. */
export interface Behind {
  behind: Lettered;
  ahead: Lettered;
  /** The price of the one behind at which both are even, cents; negative: not even as a gift. */
  price: number;
}

/** Who would catch up with whom, and where; without those that must not be used, whatever they cost. */
export function catchingUp(comparison: Comparison, sides: readonly Lettered[]): Behind[] {
  const found: Behind[] = [];
  const free = sides.filter((s) => s.side.gate === "");
  for (const ahead of free) {
    for (const behind of free) {
      const odds = comparison.better[behind.at]?.[ahead.at] ?? null;
      const price = comparison.overtake[behind.at]?.[ahead.at] ?? null;
      // Without a price of its own it is told at which it would be level.
      const trails = odds === null ? behind.side.price === null : odds < 0.5;
      if (trails && price !== null) found.push({ behind, ahead, price });
    }
  }
  return found;
}
