import { axisMoney } from "./format.ts";
import { measure } from "./measure.ts";
import { axisLabels, linear, niceDomain, niceTicks } from "./scale.ts";
import { useWidth } from "./use-width.ts";

const height = 56;

/** An amount with its spread, cents: a box from the low to the high end, a pointer at the mean. */
export function RangeBar(props: { low: number; high: number; mean: number; label: string }) {
  const { ref, width } = useWidth<HTMLDivElement>(328);
  const [from, to] = niceDomain([props.low, props.high, props.mean], 5);
  const x = linear([from, to], [8, width - 12]);
  const breadth = (tick: number) => measure(axisMoney(tick), 14);
  const labels = axisLabels(niceTicks(from, to, 5), x, breadth, [0, width], 12);
  return (
    <div class="chart" ref={ref}>
      <svg
        class="range-bar"
        role="img"
        aria-label={props.label}
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
      >
        <line class="axis" x1={x(from)} x2={x(to)} y1={34} y2={34} />
        <rect
          class="range-box"
          x={x(props.low)}
          y={12}
          width={Math.max(2, x(props.high) - x(props.low))}
          height={16}
        />
        <g class="pointer" transform={`translate(${x(props.mean)} 0)`}>
          <line y1={6} y2={32} />
          <path d="M-7 0h14l-7 10z" />
        </g>
        {labels.map(({ tick, middle }) => (
          <g key={tick}>
            <line class="axis" x1={x(tick)} x2={x(tick)} y1={30} y2={38} />
            <text class="chart-figure" x={middle} y={height - 3} text-anchor="middle">
              {axisMoney(tick)}
            </text>
          </g>
        ))}
      </svg>
    </div>
  );
}
