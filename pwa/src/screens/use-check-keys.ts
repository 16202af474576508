import { useEffect, useRef } from "preact/hooks";
import { isWriting } from "../parts/use-undo.ts";

/** Keys of one check: 0 to 4 grade, n next, p previous; never while a field is written in. */
export function useCheckKeys(acts: { grade: (n: number) => void; next: () => void; previous: () => void }) {
  const latest = useRef(acts);
  latest.current = acts;
  useEffect(() => {
    const key = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || event.repeat || isWriting(event.target)) return;
      if (document.querySelector("dialog[open]")) return;
      if (/^[0-4]$/.test(event.key)) latest.current.grade(Number(event.key));
      else if (event.key === "n" || event.key === "N") latest.current.next();
      else if (event.key === "p" || event.key === "P") latest.current.previous();
    };
    addEventListener("keydown", key);
    return () => removeEventListener("keydown", key);
  }, []);
}
