import { axisMoney } from "./format.ts";
import { measure } from "./measure.ts";
import { axisLabels, linear, niceTicks } from "./scale.ts";
import { useWidth } from "./use-width.ts";

const height = 26;
const axisHeight = 28;
const margin = 8;

/** A mean with its spread on a shared money axis, cents; zero is marked through all rows. */
export function Whisker(props: {
  low: number;
  mean: number;
  high: number;
  domain: readonly [number, number];
  label: string;
}) {
  const { ref, width } = useWidth<HTMLDivElement>(328);
  const x = linear(props.domain, [margin, width - margin]);
  const [low, high, middle] = [x(props.low), x(props.high), height / 2];
  return (
    <div class="fall" ref={ref}>
      <svg
        role="img"
        aria-label={props.label}
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
      >
        <line class="whisker-zero" x1={x(0)} x2={x(0)} y1={0} y2={height} />
        <g class="whisker">
          <line x1={low} x2={high} y1={middle} y2={middle} />
          <line x1={low} x2={low} y1={middle - 6} y2={middle + 6} />
          <line x1={high} x2={high} y1={middle - 6} y2={middle + 6} />
        </g>
        <circle class="whisker-mean" cx={x(props.mean)} cy={middle} r={6} />
      </svg>
    </div>
  );
}

/** The axis under the rows, in whole currency units. */
export function WhiskerAxis({ domain }: { domain: readonly [number, number] }) {
  const { ref, width } = useWidth<HTMLDivElement>(328);
  const x = linear(domain, [margin, width - margin]);
  const breadth = (tick: number) => measure(axisMoney(tick), 14);
  const ticks = niceTicks(domain[0], domain[1], 4);
  return (
    <div class="fall" ref={ref}>
      <svg aria-hidden="true" width={width} height={axisHeight} viewBox={`0 0 ${width} ${axisHeight}`}>
        <line class="axis" x1={x(domain[0])} x2={x(domain[1])} y1={1} y2={1} />
        <line class="whisker-zero" x1={x(0)} x2={x(0)} y1={0} y2={8} />
        {axisLabels(ticks, x, breadth, [0, width], 12).map(({ tick, middle }) => (
          <g key={tick}>
            <line class="axis" x1={x(tick)} x2={x(tick)} y1={1} y2={7} />
            <text class="chart-figure" x={middle} y={axisHeight - 4} text-anchor="middle">
              {axisMoney(tick)}
            </text>
          </g>
        ))}
      </svg>
    </div>
  );
}
