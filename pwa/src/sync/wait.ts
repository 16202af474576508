const FIRST_MS = 5_000;
const LONGEST_MS = 300_000;

/** ms to wait after the n-th failure running (from 0); chance in [0,1) spreads devices apart. */
export function waitAfter(n: number, chance: number): number {
  const full = Math.min(LONGEST_MS, FIRST_MS * 2 ** Math.min(n, 10));
  return Math.round(full * (0.5 + chance / 2));
}
