import { useId } from "preact/hooks";
import type { Score } from "../generated/types.ts";
import { linear } from "./scale.ts";
import { useWidth } from "./use-width.ts";

const bar = 28;
const top = 12;
const height = 66;

/**
 * A score of 0 to 100: solid up to where it cannot fall below, hatched over the
 * band the unchecked points could still move it in, a pointer at its value.
 */
export function ScoreBar({ score, label }: { score: Score; label: string }) {
  const { ref, width } = useWidth<HTMLDivElement>(328);
  const id = useId();
  const x = linear([0, 100], [8, width - 12]);
  const end = x(100);
  return (
    <div class="chart" ref={ref}>
      <svg
        class="score-bar"
        role="img"
        aria-label={label}
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
      >
        <defs>
          <pattern id={id} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <line class="hatch" x1="0" x2="0" y1="0" y2="7" />
          </pattern>
        </defs>
        <rect class="score-sure" x={x(0)} y={top} width={x(score.low) - x(0)} height={bar} />
        <rect
          fill={`url(#${id})`}
          x={x(score.low)}
          y={top}
          width={x(score.high) - x(score.low)}
          height={bar}
        />
        <rect class="score-frame" x={x(0)} y={top} width={end - x(0)} height={bar} />
        {[0, 25, 50, 75, 100].map((tick) => (
          <g key={tick}>
            <line class="axis" x1={x(tick)} x2={x(tick)} y1={top + bar} y2={top + bar + 5} />
            <text
              class="chart-figure"
              x={x(tick)}
              y={height - 5}
              text-anchor={tick === 0 ? "start" : tick === 100 ? "end" : "middle"}
            >
              {tick}
            </text>
          </g>
        ))}
        {score.value !== null && (
          <g class="pointer" transform={`translate(${x(score.value)} 0)`}>
            <line y1={8} y2={top + bar + 4} />
            <path d="M-8 0h16l-8 12z" />
          </g>
        )}
      </svg>
    </div>
  );
}
