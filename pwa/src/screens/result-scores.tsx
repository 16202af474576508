import { percent, plain } from "../charts/format.ts";
import { ScoreBar } from "../charts/score-bar.tsx";
import type { CheckResult, Result, Score } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { Notches } from "../parts/notches.tsx";
import { Why } from "../parts/why.tsx";
import { resultScreenWords as words } from "../words/result.ts";
import type { Lookup } from "./rubric-lookup.ts";

/** The two scores side by side in reading order; they never mix. */
export function Scores({ id, result, lookup }: { id: string; result: Result; lookup: Lookup }) {
  return (
    <section class="block">
      <h2 class="block-title">{words.scores}</h2>
      <OneScore
        id={id}
        name={words.safety}
        score={result.safety}
        of="safety"
        checks={result.checks}
        lookup={lookup}
        coverage
      />
      <OneScore
        id={id}
        name={words.condition}
        score={result.condition}
        of="condition"
        checks={result.checks}
        lookup={lookup}
      />
    </section>
  );
}

function OneScore(props: {
  id: string;
  name: string;
  score: Score;
  of: "safety" | "condition";
  checks: CheckResult[];
  lookup: Lookup;
  /** Tells how the share that was checked came about. */
  coverage?: boolean;
}) {
  const { name, score } = props;
  const value = score.value === null ? words.scoreNone : words.scoreOf(plain(score.value));
  const [low, high] = [plain(score.low), plain(score.high)];
  return (
    <div class="score">
      <p class="score-head">
        <span class="score-name">{name}</span>
        <span class={score.value === null ? "score-value score-none" : "score-value figures"}>{value}</span>
      </p>
      <ScoreBar score={score} label={words.scoreLabel(name, value, low, high)} />
      {score.coverage < 100 && <p class="hint">{words.band(low, high, percent(score.coverage / 100))}</p>}
      <div class="whys">
        <Why of={props.of} short={score.value === null} />
        {props.coverage && <Why of="coverage" />}
      </div>
      <Fold summary={words.scoreLines} aside={words.scoreChecked(score.checked, score.applies)}>
        <ScoreLines {...props} />
      </Fold>
    </div>
  );
}

/** The checks that weigh in this score, heaviest first. */
function ScoreLines(props: {
  id: string;
  of: "safety" | "condition";
  checks: CheckResult[];
  lookup: Lookup;
}) {
  const { lookup } = props;
  const rows = props.checks
    .flatMap((found) => {
      const check = lookup.check(found.check);
      const weight = check?.weight[props.of] ?? 0;
      return check && found.applies && weight > 0 ? [{ found, check, weight }] : [];
    })
    .sort((a, b) => b.weight - a.weight);
  return (
    <ul class="plain-list">
      {rows.map(({ found, check, weight }) => (
        <li key={check.id}>
          <a class="row-link" href={`/listing/${props.id}/walk/${check.id}`}>
            <span class="row-main" dir="auto">
              {check.title}
              <span class="row-note figures">{words.weight(weight)}</span>
            </span>
            <span class="row-aside">
              {found.grade === null ? (
                <span class="unchecked">{words.notChecked}</span>
              ) : (
                <Notches grade={found.grade} word={lookup.grade(found.grade)} />
              )}
            </span>
          </a>
        </li>
      ))}
    </ul>
  );
}
