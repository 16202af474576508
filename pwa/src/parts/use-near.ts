import type { RefObject } from "preact";
import { useEffect, useState } from "preact/hooks";

/** Longer than something flung past stays on the screen, ms. */
const STAY_MS = 120;

const told = new WeakMap<Element, (near: boolean) => void>();
let observer: IntersectionObserver | undefined;

/** One for all: hundreds of their own would cost more than what they save. */
const watching = (): IntersectionObserver =>
  (observer ??= new IntersectionObserver(
    (entries) => {
      for (const entry of entries) told.get(entry.target)?.(entry.isIntersecting);
    },
    { rootMargin: "300px 0px" },
  ));

/** Whether the element has been on the screen, or nearly so, for a moment. */
export function useNear(ref: RefObject<Element>): boolean {
  const [near, setNear] = useState(false);
  useEffect(() => {
    const element = ref.current;
    if (!element) return;
    let timer: ReturnType<typeof setTimeout> | undefined;
    told.set(element, (here) => {
      clearTimeout(timer);
      if (here) timer = setTimeout(() => setNear(true), STAY_MS);
      else setNear(false);
    });
    watching().observe(element);
    return () => {
      clearTimeout(timer);
      watching().unobserve(element);
    };
  }, [ref]);
  return near;
}
