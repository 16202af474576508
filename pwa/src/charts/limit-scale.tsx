import { locale as spoken } from "../words/tongue.ts";
import { limitSpan, passedSide } from "./limit-span.ts";
import { measure } from "./measure.ts";
import { axisLabels, linear, niceTicks, within } from "./scale.ts";
import { useWidth } from "./use-width.ts";

const height = 92;
const axis = 40;
const side = 10;

const tickText = (n: number) =>
  new Intl.NumberFormat(spoken(), { maximumSignificantDigits: 6, useGrouping: "min2" }).format(n);

/**
 * A value and its limit on one scale: the value a pointer above, the limit a line
 * with its words below, hatched where it is passed.
 */
export function LimitScale(props: {
  value: number;
  limit: number;
  finding: string;
  label: string;
  valueText: string;
  limitText: string;
}) {
  const { value, limit } = props;
  const { ref, width } = useWidth<HTMLDivElement>(300);
  const [from, to] = limitSpan(value, limit);
  const x = linear([from, to], [side, width - side]);
  const breadth = (tick: number) => measure(tickText(tick), 14);
  const ticks = axisLabels(niceTicks(from, to, 4), x, breadth, [0, width], 10);
  const clear = (tick: number, at: number) => Math.abs(at - x(limit)) > breadth(tick) / 2 + 5;
  const passed = passedSide(value, limit, props.finding);
  const bars = passed === 0 ? [] : hatch(x(limit), passed > 0 ? width - side : side);
  const middle = (text: string, at: number) => {
    const wide = measure(text, 15, true);
    return within(x(at), wide, 0, width) + wide / 2;
  };
  return (
    <div class="chart" ref={ref}>
      <svg
        role="img"
        aria-label={props.label}
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
      >
        <line class="axis" x1={x(from)} x2={x(to)} y1={axis} y2={axis} />
        {bars.map((at) => (
          <line key={at} class="limit-passed" x1={at} x2={at - 6} y1={axis} y2={axis + 8} />
        ))}
        {ticks.map(({ tick, middle: at }) => (
          <g key={tick}>
            <line class="axis" x1={x(tick)} x2={x(tick)} y1={axis} y2={axis + 5} />
            {clear(tick, at) && (
              <text class="chart-figure" x={at} y={axis + 22} text-anchor="middle">
                {tickText(tick)}
              </text>
            )}
          </g>
        ))}
        <line class="limit-line" x1={x(limit)} x2={x(limit)} y1={axis - 14} y2={height - 18} />
        <text class="chart-label" x={middle(props.limitText, limit)} y={height - 4} text-anchor="middle">
          {props.limitText}
        </text>
        <g class="pointer" transform={`translate(${x(value)} 0)`}>
          <line y1={20} y2={axis} />
          <path d={`M-7 ${axis - 12}h14l-7 11z`} />
        </g>
        <text class="chart-label" x={middle(props.valueText, value)} y={14} text-anchor="middle">
          {props.valueText}
        </text>
      </svg>
    </div>
  );
}

/** Where the strokes of a hatching stand between two places, 7 pixels apart. */
function hatch(a: number, b: number): number[] {
  const [from, to] = [Math.min(a, b), Math.max(a, b)];
  return Array.from({ length: Math.max(0, Math.floor((to - from) / 7)) }, (_, i) => from + 7 * (i + 1));
}
