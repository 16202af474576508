/** Changes to a rubric being edited; each gives a new rubric and leaves the old one as it was. */
import type { Check, Rubric } from "../generated/types.ts";

export const checkOf = (rubric: Rubric, id: string): Check | undefined =>
  rubric.sections.flatMap((s) => s.checks).find((c) => c.id === id);

/** A point with nothing told yet, under an id that no other has. */
export function blankCheck(rubric: Rubric): Check {
  const taken = new Set(rubric.sections.flatMap((s) => s.checks.map((c) => c.id)));
  let n = 1;
  while (taken.has(`own-${n}`)) n++;
  return {
    id: `own-${n}`,
    title: "",
    kind: "look",
    hazard: "caution",
    weight: { safety: 1, condition: 1 },
    minutes: 2,
    how: "",
    grades: { sound: "", failed: "" },
    remedies: {},
  };
}

const mapChecks = (rubric: Rubric, section: string, change: (checks: Check[]) => Check[]): Rubric => ({
  ...rubric,
  sections: rubric.sections.map((s) => (s.id === section ? { ...s, checks: change(s.checks) } : s)),
});

const sectionOf = (rubric: Rubric, check: string): string =>
  rubric.sections.find((s) => s.checks.some((c) => c.id === check))?.id ?? "";

export const withCheckAdded = (rubric: Rubric, section: string, check: Check): Rubric =>
  mapChecks(rubric, section, (checks) => [...checks, check]);

export const withCheck = (rubric: Rubric, check: Check): Rubric =>
  mapChecks(rubric, sectionOf(rubric, check.id), (checks) =>
    checks.map((c) => (c.id === check.id ? check : c)),
  );

export const withoutCheck = (rubric: Rubric, id: string): Rubric =>
  mapChecks(rubric, sectionOf(rubric, id), (checks) => checks.filter((c) => c.id !== id));

/** One place earlier (-1) or later (1) in its section; nothing moves beyond its ends. */
export const withCheckMoved = (rubric: Rubric, id: string, by: -1 | 1): Rubric =>
  mapChecks(rubric, sectionOf(rubric, id), (checks) => {
    const at = checks.findIndex((c) => c.id === id);
    const to = at + by;
    if (to < 0 || to >= checks.length) return checks;
    const moved = [...checks];
    [moved[at], moved[to]] = [moved[to] as Check, moved[at] as Check];
    return moved;
  });

/** A member that may be left out: empty text leaves it out. */
export function withText<T extends object, K extends keyof T>(whole: T, key: K, text: string): T {
  const { [key]: _, ...rest } = whole;
  return (text === "" ? rest : { ...rest, [key]: text }) as T;
}
