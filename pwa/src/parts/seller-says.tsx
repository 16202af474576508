import "../style/hand-over.css";
import { useEffect, useRef, useState } from "preact/hooks";
import type { Answer, AnswerMark } from "../data/links.ts";
import { markSeen, onSeen, unseen } from "../data/seen-answers.ts";
import { answerWords as words } from "../words/hand-over.ts";
import { moment } from "./moment.ts";
import { PhotoImage } from "./photo-image.tsx";

/** What the seller answered to one point; once it was on the screen, it no longer counts as new. */
export function SellerSays({ answers }: { answers: readonly Answer[] }) {
  const box = useRef<HTMLDivElement>(null);
  const key = answers.map((a) => `${a.path}@${a.at}`).join();
  useEffect(() => {
    if (!box.current || unseen(answers).length === 0) return;
    // Within a closed fold nothing is seen.
    const eye = new IntersectionObserver((found) => found.some((f) => f.isIntersecting) && markSeen(answers));
    eye.observe(box.current);
    return () => eye.disconnect();
  }, [key]);
  if (answers.length === 0) return null;
  return (
    <div class="seller-answers" ref={box}>
      {answers.map((answer) => (
        <div key={answer.path} class="seller-says">
          <p>
            <b>{words.says}:</b> {answer.says !== "" && words[answer.says]}
          </p>
          {answer.word !== "" && <p dir="auto">{words.word(answer.word)}</p>}
          {answer.photo !== undefined && (
            <PhotoImage hash={answer.photo} alt={words.photo} class="seller-photo" />
          )}
          {answer.at !== "" && <p class="quiet">{moment(answer.at)}</p>}
        </div>
      ))}
    </div>
  );
}

/** How many answers there are, and how many were not looked at on this device. */
function useAnswerCount(answers: readonly AnswerMark[]): { all: number; fresh: number } {
  const [, again] = useState(0);
  useEffect(() => onSeen(() => again((n) => n + 1)), []);
  return { all: answers.length, fresh: unseen(answers).length };
}

/** "2 answers from the seller", and how many of them are new; nothing where there are none. */
export function AnswerCount({ answers }: { answers: readonly AnswerMark[] }) {
  const { all, fresh } = useAnswerCount(answers);
  if (all === 0) return null;
  return (
    <span class={fresh > 0 ? "mark mark-open" : "mark"}>
      {words.count(all)}
      {fresh > 0 && ` · ${words.unseen(fresh)}`}
    </span>
  );
}
