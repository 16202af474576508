import { useState } from "preact/hooks";
import { Banner } from "../parts/page.tsx";
import type { RubricDraft } from "../parts/use-rubric-draft.ts";
import { rubricWords as words } from "../words/rubric.ts";
import { RubricProblems } from "./rubric-problems.tsx";

/** How an edited rubric stands: what is wrong, and saving it as a version. */
export function RubricState({ draft }: { draft: RubricDraft }) {
  const [said, setSaid] = useState<string | undefined>(undefined);
  const { looked, changed, saved } = draft;
  const next = saved.version + 1;
  const fine = looked !== undefined && looked.problems.length === 0;
  const publish = () => void draft.publish().then((why) => setSaid(why ? undefined : words.published(next)));
  return (
    <>
      {draft.problem && (
        <Banner tone="problem" urgent>
          {draft.problem}
        </Banner>
      )}
      <section class="block">
        <p class="quiet">{changed ? words.draft : (said ?? words.noChange)}</p>
        {looked === undefined && !draft.problem && <p role="status">{words.waiting}</p>}
        {looked && looked.problems.length > 0 && (
          <RubricProblems problems={looked.problems} rubric={draft.rubric} />
        )}
        {fine && looked.report && (
          <p role="status">
            {words.fine} {words.about(looked.report.checks, looked.report.minutes, saved.version)}.{" "}
            {looked.report.without_remedy.length > 0 &&
              words.withoutRemedy(looked.report.without_remedy.length)}
          </p>
        )}
        {changed && (
          <button type="button" class="button button-main" disabled={!fine} onClick={publish}>
            {words.publish(next)}
          </button>
        )}
      </section>
    </>
  );
}
