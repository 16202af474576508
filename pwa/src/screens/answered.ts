import type { Answer } from "../data/links.ts";
import type { Line } from "../generated/types.ts";
import { answerWords as words } from "../words/hand-over.ts";
import type { Lookup } from "./rubric-lookup.ts";

/** What a part of a paper is about: a finding, or a line of the estimate. */
export function answeredAt(
  listing: string,
  part: string,
  lookup: Lookup,
): { title: string; href: string | undefined } {
  const check = lookup.check(part);
  if (check) return { title: check.title, href: `/listing/${listing}/walk/${part}` };
  const line = lookup.remedy(part) ?? lookup.preparation(part);
  if (line) return { title: line.title, href: `/listing/${listing}/estimate` };
  return { title: words.paper, href: undefined };
}

/** Answers to a finding: to itself, or to the lines of the estimate that it led to. */
export const answersToCheck = (answers: readonly Answer[], check: string, lines: readonly Line[]): Answer[] =>
  answers.filter(
    (answer) =>
      answer.line === check || lines.some((line) => line.id === answer.line && line.because.includes(check)),
  );

/** Answers to a line of the estimate: to itself, or to the findings that led to it. */
export const answersToLine = (answers: readonly Answer[], line: Line): Answer[] =>
  answers.filter(
    (answer) => answer.line === line.id || (line.kind === "remedy" && line.because.includes(answer.line)),
  );
