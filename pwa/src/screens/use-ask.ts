import { useCallback, useEffect, useMemo, useRef, useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import { type Ask, addressOf, readAsk } from "../parts/find-listings.ts";

/** Browsers refuse to change the address at every letter, ms. */
const PAUSE_MS = 300;

/**
 * What is asked of the list, kept in the address so that the way back leads to it. A choice is a step of its own;
 * letters typed are none.
 */
export function useAsk(): { ask: Ask; change: (part: Partial<Ask>) => void; flush: () => void } {
  const { query, route } = useLocation();
  const [typed, setTyped] = useState<string | undefined>(undefined);
  const ask = useMemo(
    () => ({ ...readAsk(query), ...(typed === undefined ? {} : { q: typed }) }),
    [query, typed],
  );
  const now = useRef({ ask, typed });
  now.current = { ask, typed };
  const flush = useCallback(() => {
    if (now.current.typed === undefined) return;
    setTyped(undefined);
    route(addressOf(now.current.ask), true);
  }, [route]);
  useEffect(() => {
    if (typed === undefined) return;
    const timer = setTimeout(flush, PAUSE_MS);
    return () => clearTimeout(timer);
  }, [typed, flush]);
  const change = useCallback(
    (part: Partial<Ask>) => {
      if (part.q !== undefined && Object.keys(part).length === 1) {
        setTyped(part.q);
        return;
      }
      setTyped(undefined);
      route(addressOf({ ...now.current.ask, ...part }));
    },
    [route],
  );
  return { ask, change, flush };
}
