import { type Filling, FillingKey, StackBar } from "../charts/stack-bar.tsx";
import type { AllIn } from "../generated/types.ts";
import { Hazard } from "../parts/hazard.tsx";
import { compareWords as words } from "../words/compare.ts";
import { rounded } from "./amounts.tsx";
import type { Shown } from "./compare-side.ts";

const fillings = {
  price: "solid",
  dues: "upright",
  landing: "slanted",
  repair: "dotted",
  hidden: "blank",
} as const satisfies Record<string, Filling>;

export type Cause = keyof typeof fillings;

/** The causes of an all-in sum, cents, in the order they are stacked. */
export const causesOf = (sum: AllIn): [Cause, number][] => [
  ["price", sum.price],
  ["dues", sum.tax + sum.fees],
  ["landing", sum.landing],
  ["repair", sum.repair],
  ["hidden", sum.hidden],
];

/** Every all-in sum as one bar by cause, on one scale, best first. */
export function Bars({ sides, currency }: { sides: readonly Shown[]; currency: string }) {
  const most = Math.max(0, ...sides.map((s) => s.side.all_in?.total ?? 0));
  if (most <= 0) return null;
  return (
    <section class="block">
      <h2 class="block-title">{words.bars}</h2>
      <p class="hint">{words.barsHint}</p>
      <p class="filling-keys">
        {(Object.keys(fillings) as Cause[]).map((cause) => (
          <span key={cause} class="filling-name">
            <FillingKey filling={fillings[cause]} /> {words.parts[cause]}
          </span>
        ))}
      </p>
      <ul class="bars">
        {sides.map((s) => (
          <li key={s.id}>
            <Bar of={s} most={most} currency={currency} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Bar({ of, most, currency }: { of: Shown; most: number; currency: string }) {
  const { letter, side } = of;
  const sum = side.all_in;
  return (
    <>
      <div class="bar-head">
        <span class="letter">{letter}</span>
        <Hazard word={side.verdict.hazard} small />
        <span class="bar-verdict">{side.verdict.title}</span>
        <b class="bar-sum figures">{sum ? rounded(sum.total, currency) : words.noSum}</b>
      </div>
      <p class="bar-title" dir="auto">
        {side.title}
      </p>
      {sum && (
        <StackBar
          parts={causesOf(sum).map(([id, amount]) => ({ id, amount, filling: fillings[id] }))}
          most={most}
          label={words.allInLabel(
            causesOf(sum)
              .filter(([, amount]) => amount !== 0)
              .map(([id, amount]) => words.partOf(words.parts[id], rounded(amount, currency))),
            rounded(sum.total, currency),
          )}
        />
      )}
    </>
  );
}
