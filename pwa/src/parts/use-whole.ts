import { type MutableRef, useRef } from "preact/hooks";

/**
 * One stored value that several fields are parts of. Each field changes `current`
 * and keeps the whole, so that two left at the same moment do not take each
 * other's change back.
 */
export function useWhole<T>(stored: T): MutableRef<T> {
  const whole = useRef(stored);
  const seen = useRef(stored);
  if (seen.current !== stored) {
    seen.current = stored;
    whole.current = stored;
  }
  return whole;
}
