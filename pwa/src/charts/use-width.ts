import type { RefObject } from "preact";
import { useLayoutEffect, useRef, useState } from "preact/hooks";

/** Breadth of an element in CSS pixels, followed as it changes, so that charts draw text at its true size. */
export function useWidth<T extends Element>(first: number): { ref: RefObject<T>; width: number } {
  const ref = useRef<T>(null);
  const [width, setWidth] = useState(first);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const read = () => {
      const now = Math.round(element.getBoundingClientRect().width);
      if (now > 0) setWidth(now);
    };
    read();
    const watcher = new ResizeObserver(read);
    watcher.observe(element);
    return () => watcher.disconnect();
  }, []);
  return { ref, width };
}
