/** Answers two by two about the points of a section, and what weights they make. */
import type { Check, Rubric } from "../generated/types.ts";

export type Score = "safety" | "condition";

/** The points of a section that count for a score, heaviest first, as many as can be compared. */
export function comparable(checks: Check[], score: Score, most: number): Check[] {
  return checks
    .filter((c) => c.weight[score] > 0)
    .sort((a, b) => b.weight[score] - a.weight[score])
    .slice(0, most);
}

/** 9 .. 1 .. -9 as a ratio: -3 is a third. */
const ratioOf = (answer: number): number => (answer < 0 ? 1 / -answer : answer);

/** The square of ratios of answers kept by pair "a/b". */
export function matrix(ids: string[], answers: ReadonlyMap<string, number>): number[][] {
  return ids.map((a, i) =>
    ids.map((b, j) => {
      if (i === j) return 1;
      const first = answers.get(`${a}/${b}`);
      if (first !== undefined) return ratioOf(first);
      const second = answers.get(`${b}/${a}`);
      return second === undefined ? 1 : 1 / ratioOf(second);
    }),
  );
}

/** Whole weights in the given shares that keep the total, each at least 1. */
export function spread(total: number, shares: number[]): number[] {
  const free = Math.max(0, total - shares.length);
  const exact = shares.map((s) => 1 + s * free);
  const whole = exact.map(Math.floor);
  let left = Math.max(total, shares.length) - whole.reduce((a, b) => a + b, 0);
  const order = exact
    .map((x, i) => [x - Math.floor(x), i] as const)
    .sort((a, b) => b[0] - a[0] || a[1] - b[1]);
  for (const [, i] of order) {
    if (left <= 0) break;
    whole[i] = (whole[i] ?? 0) + 1;
    left--;
  }
  return whole;
}

/** The rubric with weights of one score set by check. */
export const withWeights = (rubric: Rubric, score: Score, weights: ReadonlyMap<string, number>): Rubric => ({
  ...rubric,
  sections: rubric.sections.map((s) => ({
    ...s,
    checks: s.checks.map((c) => {
      const weight = weights.get(c.id);
      return weight === undefined ? c : { ...c, weight: { ...c.weight, [score]: weight } };
    }),
  })),
});
