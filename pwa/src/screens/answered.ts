import type { Answer } from "../data/links.ts";
import type { Line } from "../generated/types.ts";
import { answerWords as words } from "../words/hand-over.ts";
import type { Lookup } from "./rubric-lookup.ts";

/** The finding that a part of a paper is about. */
export function answeredAt(
  listing: string,
  part: string,
  lookup: Lookup,
): { title: string; href: string | undefined } {
  const check = lookup.check(part);
  if (check) return { title: check.title, href: `/listing/${listing}/walk/${part}` };
  return { title: words.paper, href: undefined };
}

/** Answers to a finding: the paper names its parts by them. */
export const answersToCheck = (answers: readonly Answer[], check: string): Answer[] =>
  answers.filter((answer) => answer.line === check);

/** Answers to a line of the estimate: to the findings that led to it. */
export const answersToLine = (answers: readonly Answer[], line: Line): Answer[] =>
  answers.filter((answer) => line.kind === "remedy" && line.because.includes(answer.line));
