import type { Check, Grades } from "../generated/types.ts";

/** The grades' names in the rubric, by number. */
const names: readonly (keyof Grades)[] = ["failed", "bad", "worn", "sound", "as_new"];

/** The number of a grade as the rubric names it. */
export const gradeNumber = (name: string): number | undefined => {
  const n = (names as readonly string[]).indexOf(name);
  return n < 0 ? undefined : n;
};

/** What a grade looks like at this check; undefined where it is not offered. */
export function gradeText(check: Check, grade: number): string | undefined {
  const name = names[grade];
  const text = name && check.grades[name];
  return text === undefined || text === "" ? undefined : text;
}

/** The grades offered at this check, best first. */
export const offered = (check: Check): number[] =>
  [4, 3, 2, 1, 0].filter((n) => gradeText(check, n) !== undefined);
