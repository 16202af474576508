import { plain } from "../charts/format.ts";
import { doc } from "../data/read.ts";
import { integerOf } from "../data/shape.ts";
import type { Comparison, Criterion } from "../generated/types.ts";
import { save, saveValue } from "../parts/save.ts";
import { Stepper } from "../parts/stepper.tsx";
import { useDoc } from "../parts/use-listing.ts";
import { compareWords as words } from "../words/compare.ts";
import type { Lettered } from "./compare-side.ts";

/** Where the two buttons stop. */
const marks = [0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100];

/** The order by what counts for the shop, the weights behind it, and how firm it is. */
export function Ranking({ comparison, sides }: { comparison: Comparison; sides: readonly Lettered[] }) {
  const { criteria, moves } = comparison;
  if (criteria.length === 0) return null;
  return (
    <section class="block">
      <h2 class="block-title">{words.rank}</h2>
      <ol class="plain-list rank" aria-live="polite">
        {sides.map((s) => (
          <li key={s.id} class="rank-row">
            <span class="rank-name" dir="auto">
              <span class="letter">{s.letter}</span> {s.side.title === "" ? words.untitled : s.side.title}
            </span>
            <span class="rank-score figures">{standing(s)}</span>
          </li>
        ))}
      </ol>
      {moves.length > 0 && (
        <>
          <h3 class="small-head">{words.moves}</h3>
          <ul class="always">
            {moves.map((move) => (
              <li key={move.criterion}>{move.sentence}</li>
            ))}
          </ul>
        </>
      )}
      <p class="hint">{words.rankHint}</p>
      <div class="weights">
        {criteria.map((criterion, i) => (
          <Weight key={criterion.id} criterion={criterion} at={i} sides={sides} criteria={criteria} />
        ))}
      </div>
      <UsualWeights />
    </section>
  );
}

/** Takes back all own weights at once. */
export function UsualWeights() {
  const own = [...(useDoc("shop")?.values.keys() ?? [])].filter((path) => path.startsWith(pathOf("")));
  if (own.length === 0) return null;
  const changes = own.map((path) => ({ doc: "shop", path, value: null }));
  return (
    <button type="button" class="button" onClick={() => void save(words.setUsual, changes)}>
      {words.usual}
    </button>
  );
}

/** What stands at the right of a ranked listing: a verdict that bars it goes before any score. */
function standing({ side }: Lettered): string {
  if (side.gate !== "") return side.verdict.title;
  return side.score === null ? words.noScore : words.score(plain(Math.round(side.score)));
}

const pathOf = (criterion: string): string => `weight/${criterion}`;

/** Whether another criterion counts by the records as they are now: what is on the screen may be a tap behind. */
async function othersCount(criteria: readonly Criterion[], id: string): Promise<boolean> {
  const { values } = await doc("shop");
  return criteria.some((c) => c.id !== id && (integerOf(values.get(pathOf(c.id))) ?? c.weight) > 0);
}

/** One criterion: what is worst and best on its scale, where the listings stand, and its weight. */
function Weight(props: {
  criterion: Criterion;
  at: number;
  sides: readonly Lettered[];
  criteria: readonly Criterion[];
}) {
  const { criterion } = props;
  const here = props.sides.flatMap(({ letter, side }) => {
    const part = side.parts[props.at];
    if (part === undefined) return [];
    return [
      part === null ? words.partUnknown(letter) : words.sidePart(letter, plain(Math.round(part * 100))),
    ];
  });
  return (
    <Stepper
      id={`shop/weight/${criterion.id}`}
      label={criterion.title}
      hint={words.criterionHint(criterion.scale, here)}
      value={criterion.weight}
      marks={marks}
      low={0}
      high={100}
      whole
      keep={async (weight) =>
        weight > 0 || (await othersCount(props.criteria, criterion.id))
          ? saveValue(words.setWeight(criterion.title), "shop", pathOf(criterion.id), weight)
          : words.noWeight
      }
    />
  );
}
