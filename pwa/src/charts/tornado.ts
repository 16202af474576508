import type { Swing } from "../generated/types.ts";
import { niceDomain } from "./scale.ts";

/** One bar: where it begins and ends on the money axis, and what the input was there. */
export interface SwingBar {
  from: number;
  to: number;
  fromAt: string;
  toAt: string;
}

/** A swing with its lower offer first, whichever end of the input brings it. */
export function swingBar(swing: Swing): SwingBar {
  const { low, high, low_at: lowAt, high_at: highAt } = swing;
  return low <= high
    ? { from: low, to: high, fromAt: lowAt, toAt: highAt }
    : { from: high, to: low, fromAt: highAt, toAt: lowAt };
}

/** The money axis that all bars share, cents: it hugs them, and holds the offer they swing around. */
export function swingDomain(bars: readonly SwingBar[], offer: number | undefined): [number, number] {
  const ends = [...bars.flatMap((b) => [b.from, b.to]), ...(offer === undefined ? [] : [offer])];
  const low = Math.min(...ends);
  const high = Math.max(...ends);
  // Where all ends are one, the axis reaches to zero.
  return ends.length === 0 || low === high ? niceDomain(ends, 4) : [low, high];
}
