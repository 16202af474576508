import { useCallback, useEffect, useState } from "preact/hooks";
import { lastUndo, type UndoStep, undo } from "../data/write.ts";
import { undoWords as words } from "../words/frame.ts";
import { useWatch } from "./use-watch.ts";

/** Tells whether keys now belong to a field the user writes in. */
export function isWriting(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target instanceof HTMLInputElement) return target.type !== "radio" && target.type !== "checkbox";
  return (
    target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement || target.isContentEditable
  );
}

export interface UndoView {
  step: UndoStep | undefined;
  take: () => void;
  /** What the last undo did, or why it failed. */
  said: string;
}

/** The last change, and taking it back by tap or by Ctrl+Z outside of fields. */
export function useUndo(): UndoView {
  const step = useWatch("undo", lastUndo).value;
  const [said, setSaid] = useState("");
  const take = useCallback(async () => {
    // Leaving a field keeps what was typed in it, so that it is what is taken back.
    if (document.activeElement instanceof HTMLElement && isWriting(document.activeElement)) {
      document.activeElement.blur();
    }
    try {
      const done = await undo();
      if (!done) return;
      const rest = done.kept.length > 0 ? ` ${words.kept(done.kept.length)}` : "";
      setSaid(`${words.done(done.label)}.${rest}`);
    } catch (cause) {
      setSaid(cause instanceof Error ? cause.message : String(cause));
    }
  }, []);
  useEffect(() => {
    const key = (event: KeyboardEvent) => {
      const asked = (event.ctrlKey || event.metaKey) && !event.shiftKey && !event.altKey && event.key === "z";
      if (!asked || isWriting(event.target)) return;
      event.preventDefault();
      void take();
    };
    addEventListener("keydown", key);
    return () => removeEventListener("keydown", key);
  }, [take]);
  useEffect(() => {
    if (said === "") return;
    const timer = setTimeout(() => setSaid(""), 6000);
    return () => clearTimeout(timer);
  }, [said]);
  return { step, take: () => void take(), said };
}
