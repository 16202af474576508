import { useId } from "preact/hooks";
import { axisMoney } from "./format.ts";
import { measure } from "./measure.ts";
import { axisLabels, linear, niceSpan, niceTicks, type Scale } from "./scale.ts";
import { swarm } from "./swarm.ts";
import { useWidth } from "./use-width.ts";

/** A comparable brought to this listing, cents. */
export interface PlotDot {
  id: string;
  price: number;
  /** Share of all, 0 to 1. */
  weight: number;
  /** So far from the others that it counts less. */
  apart: boolean;
}

/** Where a way to worth says it lies, cents. */
export interface PlotRange {
  title: string;
  low: number;
  high: number;
  centre: number;
  /** What the others come to together. */
  whole: boolean;
}

const edge = 10;
const lane = 64;
const row = 46;
const foot = 28;
const type = 14;
/** More than these would only be a blot. */
const most = 300;

/**
 * Comparables as dots on a price scale, the larger the more they count, and under
 * them the range of each way to worth. Dots beyond the scale are arrows at its end.
 */
export function WorthPlot(props: {
  dots: readonly PlotDot[];
  ranges: readonly PlotRange[];
  title: string;
  describe: string;
}) {
  const { ref, width } = useWidth<HTMLDivElement>(328);
  const id = useId();
  const { dots, ranges } = props;
  // One that stands apart must not squeeze all others into a corner.
  const domain = niceSpan(
    [...dots.filter((d) => !d.apart).map((d) => d.price), ...ranges.flatMap((r) => [r.low, r.high])],
    5,
  );
  const x = linear(domain, [edge, width - edge]);
  const top = dots.length > 0 ? lane : 0;
  const axis = top + ranges.length * row + 4;
  const height = axis + foot;
  const ticks = niceTicks(domain[0], domain[1], 5);
  const labels = axisLabels(ticks, x, (tick) => measure(axisMoney(tick), type), [0, width], 12);
  return (
    <div class="chart" ref={ref}>
      <svg
        class="worth-plot"
        role="img"
        aria-labelledby={`${id}-title ${id}-desc`}
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
      >
        <title id={`${id}-title`}>{props.title}</title>
        <desc id={`${id}-desc`}>{props.describe}</desc>
        {ticks.map((tick) => (
          <line key={tick} class="grid" x1={x(tick)} x2={x(tick)} y1={0} y2={axis} />
        ))}
        <Dots dots={dots} x={x} width={width} />
        {ranges.map((range, i) => (
          <RangeRow key={range.title} range={range} x={x} y={top + i * row} />
        ))}
        <line class="axis" x1={x(domain[0])} x2={x(domain[1])} y1={axis} y2={axis} />
        {labels.map(({ tick, middle }) => (
          <g key={tick}>
            <line class="axis" x1={x(tick)} x2={x(tick)} y1={axis} y2={axis + 5} />
            <text class="chart-figure" x={middle} y={axis + 21} text-anchor="middle">
              {axisMoney(tick)}
            </text>
          </g>
        ))}
      </svg>
    </div>
  );
}

function Dots({ dots, x, width }: { dots: readonly PlotDot[]; x: Scale; width: number }) {
  const heaviest = [...dots].sort((a, b) => b.weight - a.weight).slice(0, most);
  const full = heaviest[0]?.weight ?? 0;
  // Areas stand for weights; many dots must share the lane.
  const large = Math.max(3, Math.min(9, Math.sqrt((width * lane) / (8 * Math.max(1, heaviest.length)))));
  const [low, high] = x.domain;
  const middle = lane / 2;
  const radius = (weight: number) => Math.max(2.5, large * Math.sqrt(full > 0 ? weight / full : 1));
  const inside = heaviest.filter((d) => d.price >= low && d.price <= high);
  const placed = swarm(
    inside.map((dot) => ({ dot, x: x(dot.price), r: radius(dot.weight) })),
    middle - large,
  );
  return (
    <>
      {placed.map(({ dot, x: at, y, r }) => (
        <circle
          key={dot.id}
          class={dot.apart ? "plot-dot plot-apart" : "plot-dot"}
          cx={at}
          cy={middle + y}
          r={r}
        />
      ))}
      {heaviest.some((d) => d.price < low) && (
        <path class="plot-beyond" d={`M${edge - 9} ${middle}l9-6v12z`} />
      )}
      {heaviest.some((d) => d.price > high) && (
        <path class="plot-beyond" d={`M${width - edge + 9} ${middle}l-9-6v12z`} />
      )}
    </>
  );
}

function RangeRow({ range, x, y }: { range: PlotRange; x: Scale; y: number }) {
  const [from, to, centre] = [x(range.low), x(range.high), x(range.centre)];
  const bar = y + 22;
  return (
    <g>
      <text class="chart-label plot-title" x={0} y={y + 15}>
        {range.title}
      </text>
      <rect
        class={range.whole ? "range-box" : "plot-range"}
        x={from}
        y={bar}
        width={Math.max(2, to - from)}
        height={14}
      />
      {range.whole && <line class="plot-gap" x1={centre} x2={centre} y1={bar} y2={bar + 14} />}
      <line class="plot-centre" x1={centre} x2={centre} y1={bar - 3} y2={bar + 17} />
    </g>
  );
}
