/** Which answers of sellers were looked at on this device; nothing of it is synced. */
import type { AnswerMark } from "./links.ts";

const KEY = "asfound-answers-seen";
const KEPT = 2_000;

/** An answer that was changed is another one. */
const markOf = (answer: AnswerMark): string => `${answer.path}@${answer.at}`;

const seen = new Set<string>(stored());
const listeners = new Set<() => void>();

function stored(): string[] {
  try {
    const list: unknown = JSON.parse(localStorage.getItem(KEY) ?? "[]");
    return Array.isArray(list) ? list.filter((mark) => typeof mark === "string") : [];
  } catch {
    return [];
  }
}

export const unseen = (answers: readonly AnswerMark[]): AnswerMark[] =>
  answers.filter((a) => !seen.has(markOf(a)));

export function markSeen(answers: readonly AnswerMark[]): void {
  const fresh = unseen(answers);
  if (fresh.length === 0) return;
  for (const answer of fresh) seen.add(markOf(answer));
  try {
    localStorage.setItem(KEY, JSON.stringify([...seen].slice(-KEPT)));
  } catch {
    // Without storage they count as new next time.
  }
  for (const listener of listeners) listener();
}

/** Called after each look. Returns the unsubscriber. */
export function onSeen(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
