import type { Problem, Rubric } from "../generated/types.ts";
import { rubricWords as words } from "../words/rubric.ts";

const inCheck = /^sections\[(\d+)\]\.checks\[(\d+)\]\.?(.*)$/;

/** A field of a rubric being edited, by the name of its point where it belongs to one. */
export function placeOf(field: string, rubric: Rubric | undefined): string {
  const [, section, check, rest] = inCheck.exec(field) ?? [];
  const point = rubric?.sections[Number(section)]?.checks[Number(check)];
  return point ? words.inPoint(point.title || words.newCheck, rest ?? "") : field;
}

/** What a rubric gets wrong, each with its place and what would be right. */
export function RubricProblems({ problems, rubric }: { problems: Problem[]; rubric?: Rubric }) {
  return (
    <div class="field-problem" role="alert">
      <p>{words.problems(problems.length)}</p>
      <ul class="ruled">
        {problems.map((p, i) => (
          <li key={`${p.line}/${p.field ?? ""}/${i}`}>
            {words.problem(p.line, placeOf(p.field ?? "", rubric), p.what, p.right)}
          </li>
        ))}
      </ul>
    </div>
  );
}
