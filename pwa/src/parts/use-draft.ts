import { useEffect, useRef, useState } from "preact/hooks";

/** How long typing may pause before it is kept, ms. */
const pause = 300;

/** Texts that could not be kept yet, by field, so that a screen left and reopened shows them again. */
const unkept = new Map<string, string>();

/** Keeps the text, or answers why not in words for the field. */
export type Keep = (text: string) => string | undefined | Promise<string | undefined>;

export interface Draft {
  text: string;
  problem: string | undefined;
  input: (text: string) => void;
  /** Keeps now what was typed: on blur, on leaving. */
  flush: () => void;
}

/**
 * A text being typed: kept while typing pauses, and at once when the field, the
 * screen or the page is left. What cannot be kept stays in the field with its reason.
 */
export function useDraft(id: string, stored: string, keep: Keep): Draft {
  const [text, setText] = useState(() => unkept.get(id) ?? stored);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const state = useRef({ dirty: unkept.has(id), editing: false, text, timer: 0, keep, stored, alive: true });
  state.current.keep = keep;

  /** Shows what is stored, unless the text is newer or somebody is still at it: "2.5" may become "2.505". */
  const show = () => {
    const s = state.current;
    if (s.dirty || s.editing || !s.alive || s.text === s.stored) return;
    s.text = s.stored;
    setText(s.stored);
  };

  const attempt = (left: boolean) => {
    const s = state.current;
    clearTimeout(s.timer);
    if (left) s.editing = false;
    if (!s.dirty) {
      show();
      return;
    }
    const sent = s.text;
    const done = (why: string | undefined) => {
      if (why === undefined) {
        if (s.text === sent) {
          s.dirty = false;
          unkept.delete(id);
          // The store tells of the change a moment after it was kept.
          setTimeout(show, pause);
        }
      } else unkept.set(id, sent);
      // Half-typed is not yet wrong: a new problem is said when the field is left.
      if (s.alive) setProblem((before) => (left || before !== undefined ? why : undefined));
    };
    const answer = s.keep(sent);
    if (answer instanceof Promise) {
      answer.then(done, (cause: unknown) => done(cause instanceof Error ? cause.message : String(cause)));
    } else done(answer);
  };
  const latest = useRef(attempt);
  latest.current = attempt;

  const input = (next: string) => {
    const s = state.current;
    s.text = next;
    s.dirty = true;
    s.editing = true;
    setText(next);
    clearTimeout(s.timer);
    s.timer = window.setTimeout(() => latest.current(false), pause);
  };

  useEffect(() => {
    const s = state.current;
    if (s.stored === stored) return;
    s.stored = stored;
    show();
  }, [stored]);

  useEffect(() => {
    const s = state.current;
    s.alive = true;
    const leave = () => latest.current(true);
    const hide = () => document.visibilityState === "hidden" && latest.current(true);
    addEventListener("pagehide", leave);
    document.addEventListener("visibilitychange", hide);
    if (s.dirty) leave();
    return () => {
      s.alive = false;
      removeEventListener("pagehide", leave);
      document.removeEventListener("visibilitychange", hide);
      latest.current(true);
    };
  }, []);

  return { text, problem, input, flush: () => attempt(true) };
}
