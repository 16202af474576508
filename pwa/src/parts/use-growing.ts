import { useEffect, useState } from "preact/hooks";

/** Cards of one go: few enough that the page answers in between. */
const STEP = 16;

/**
 * How many of a long list to draw: at first those of a screen, then more, bit by bit, until all are there. `of` names
 * the list; another one begins anew.
 */
export function useGrowing(of: string, all: number, first: number): number {
  const [grown, setGrown] = useState({ of, count: first });
  const count = Math.min(all, grown.of === of ? grown.count : first);
  useEffect(() => {
    if (count >= all) return;
    const grow = () => setGrown({ of, count: count + STEP });
    if (typeof requestIdleCallback === "undefined") {
      const timer = setTimeout(grow, 30);
      return () => clearTimeout(timer);
    }
    const idle = requestIdleCallback(grow, { timeout: 300 });
    return () => cancelIdleCallback(idle);
  }, [of, count, all]);
  return count;
}
