import { useCallback, useRef } from "preact/hooks";

/**
 * Does work one piece at a time; of what comes meanwhile only the last is done, so
 * that quick taps do not pile up before the engine.
 */
export function useTurn(): (work: () => Promise<void>) => void {
  const line = useRef<{ busy: boolean; waiting?: () => Promise<void> }>({ busy: false });
  return useCallback((work) => {
    const start = async (next: () => Promise<void>) => {
      line.current.busy = true;
      await next();
      line.current.busy = false;
      const after = line.current.waiting;
      delete line.current.waiting;
      if (after) await start(after);
    };
    if (line.current.busy) line.current.waiting = work;
    else void start(work);
  }, []);
}
