import type { RefObject } from "preact";
import { useEffect, useState } from "preact/hooks";

/** Without a scroll for so long the screen stands still, ms. */
const STILL_MS = 150;
/** A screen that never stands still shows what stays on it for so long, ms. */
const STAY_MS = 500;

const told = new WeakMap<Element, (near: boolean) => void>();
/** On the screen and not told so yet, since when. */
const waiting = new Map<Element, number>();
let observer: IntersectionObserver | undefined;
let looking = false;
let scrolled = Number.NEGATIVE_INFINITY;

function look(): void {
  looking = false;
  const now = performance.now();
  const still = now - scrolled >= STILL_MS;
  for (const [element, since] of waiting) {
    if (!still && now - since < STAY_MS) continue;
    waiting.delete(element);
    told.get(element)?.(true);
  }
  lookIn(STILL_MS);
}

function lookIn(ms: number): void {
  if (looking || waiting.size === 0) return;
  looking = true;
  setTimeout(look, ms);
}

/** One for all: hundreds of their own would cost more than what they save. */
function watching(): IntersectionObserver {
  if (observer) return observer;
  addEventListener(
    "scroll",
    () => {
      scrolled = performance.now();
    },
    { passive: true },
  );
  observer = new IntersectionObserver(
    (entries) => {
      for (const { target, isIntersecting } of entries) {
        if (isIntersecting) waiting.set(target, performance.now());
        else if (!waiting.delete(target)) told.get(target)?.(false);
      }
      lookIn(0);
    },
    { rootMargin: "300px 0px" },
  );
  return observer;
}

/** Whether the element is on the screen, or nearly so, to stay: what is flung past is not. */
export function useNear(ref: RefObject<Element>): boolean {
  const [near, setNear] = useState(false);
  useEffect(() => {
    const element = ref.current;
    if (!element) return;
    told.set(element, setNear);
    watching().observe(element);
    return () => {
      waiting.delete(element);
      told.delete(element);
      watching().unobserve(element);
    };
  }, [ref]);
  return near;
}
