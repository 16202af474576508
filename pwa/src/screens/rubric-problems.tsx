import type { Problem } from "../generated/types.ts";
import { rubricWords as words } from "../words/rubric.ts";

/** What a rubric gets wrong, each with its place and what would be right. */
export function RubricProblems({ problems }: { problems: Problem[] }) {
  return (
    <div class="field-problem" role="alert">
      <p>{words.problems(problems.length)}</p>
      <ul class="ruled">
        {problems.map((p, i) => (
          <li key={`${p.line}/${p.field ?? ""}/${i}`}>
            {words.problem(p.line, p.field ?? "", p.what, p.right)}
          </li>
        ))}
      </ul>
    </div>
  );
}
