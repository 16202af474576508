import { measure } from "./measure.ts";
import { linear, within } from "./scale.ts";
import type { SwingBar } from "./tornado.ts";
import { useWidth } from "./use-width.ts";

const type = 14;
const headHeight = 34;
const barHeight = 34;

/** What the head and all bars of one tornado share. */
export interface TornadoAxis {
  domain: readonly [number, number];
  /** The offer they swing around, cents; none where there is none to make. */
  offer: number | undefined;
  show: (cents: number) => string;
  /** Room for the amounts beside the bars, the same for all, so that they stand on one axis. */
  ends: readonly string[];
}

function scaleOf(axis: TornadoAxis, width: number) {
  const room = Math.max(0, ...axis.ends.map((text) => measure(text, type))) + 10;
  return linear(axis.domain, [room, Math.max(width - room, room + 40)]);
}

/** The offer the bars swing around, pointed at from above. */
export function TornadoHead({ axis, label }: { axis: TornadoAxis; label: string }) {
  const { ref, width } = useWidth<HTMLDivElement>(328);
  if (axis.offer === undefined) return null;
  const x = scaleOf(axis, width)(axis.offer);
  const breadth = measure(label, type + 1, true);
  return (
    <div class="fall" ref={ref}>
      <svg aria-hidden="true" width={width} height={headHeight} viewBox={`0 0 ${width} ${headHeight}`}>
        <text class="chart-label" x={within(x, breadth, 0, width)} y={15}>
          {label}
        </text>
        <g class="pointer" transform={`translate(${x} 21)`}>
          <path d="M-7 0h14l-7 10z" />
          <line y1={9} y2={headHeight - 21} />
        </g>
      </svg>
    </div>
  );
}

/** What one input does to the offer: outlined below it, filled above, each end with its amount. */
export function TornadoBar({ axis, bar, label }: { axis: TornadoAxis; bar: SwingBar; label: string }) {
  const { ref, width } = useWidth<HTMLDivElement>(328);
  const x = scaleOf(axis, width);
  const [from, to] = [x(bar.from), x(bar.to)];
  const middle = axis.offer === undefined ? from : Math.min(Math.max(x(axis.offer), from), to);
  const zero = axis.domain[0] < 0 && axis.domain[1] > 0;
  return (
    <div class="fall" ref={ref}>
      <svg
        role="img"
        aria-label={label}
        width={width}
        height={barHeight}
        viewBox={`0 0 ${width} ${barHeight}`}
      >
        {zero && <line class="extension" x1={x(0)} x2={x(0)} y1={0} y2={barHeight} />}
        <rect class="fall-bar fall-loss" x={from} y={6} width={Math.max(middle - from, 0)} height={22} />
        <rect class="fall-bar fall-total" x={middle} y={6} width={Math.max(to - middle, 1)} height={22} />
        {axis.offer !== undefined && (
          <line class="swing-middle" x1={x(axis.offer)} x2={x(axis.offer)} y1={0} y2={barHeight} />
        )}
        <text class="chart-figure" x={from - 6} y={22} text-anchor="end">
          {axis.show(bar.from)}
        </text>
        <text class="chart-figure" x={to + 6} y={22}>
          {axis.show(bar.to)}
        </text>
      </svg>
    </div>
  );
}
