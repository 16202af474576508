import { useId } from "preact/hooks";
import type { CurvePoint } from "../generated/types.ts";
import { showMoney } from "../parts/money.ts";
import { axisMoney, percent } from "./format.ts";
import { Mark, type MarkShape } from "./mark.tsx";
import { measure } from "./measure.ts";
import { axisLabels, linear, niceTicks, onDimension } from "./scale.ts";
import { useWidth } from "./use-width.ts";

export interface CurveMark {
  id: string;
  title: string;
  shape: MarkShape;
  price: number;
  odds: number;
}

export interface CurveWords {
  title: string;
  describe: string;
}

const left = 46;
const right = 14;
const top = 14;
const plot = 190;
const lane = 28;
const type = 14;

/**
 * Odds of coming out ahead against the price. The marks are dimensioned below the
 * axis as in a workshop drawing: shorter dimensions stand nearer, so that no
 * extension line cuts another's text.
 */
export function OddsCurve(props: {
  curve: readonly CurvePoint[];
  marks: readonly CurveMark[];
  currency: string;
  words: CurveWords;
}) {
  const { ref, width } = useWidth<HTMLDivElement>(328);
  const id = useId();
  const marks = [...props.marks].sort((a, b) => a.price - b.price);
  const prices = [...props.curve.map((p) => p.price), ...marks.map((m) => m.price)];
  const low = Math.min(0, ...prices);
  const high = Math.max(1, ...prices);
  const x = linear([low, high], [left, width - right]);
  const y = linear([0, 1], [top + plot, top]);
  const floor = y(0);
  const lanes = floor + 28;
  const height = lanes + marks.length * lane + 6;
  const breadth = (tick: number) => measure(axisMoney(tick), type);
  const labels = axisLabels(niceTicks(low, high, 5), x, breadth, [0, width], 12);
  const path = props.curve.map(
    (p, i) => `${i === 0 ? "M" : "L"}${x(p.price).toFixed(1)} ${y(p.odds).toFixed(1)}`,
  );
  return (
    <div class="chart" ref={ref}>
      <svg
        class="odds-curve"
        role="img"
        aria-labelledby={`${id}-title ${id}-desc`}
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
      >
        <title id={`${id}-title`}>{props.words.title}</title>
        <desc id={`${id}-desc`}>{props.words.describe}</desc>
        {[0, 0.25, 0.5, 0.75, 1].map((odds) => (
          <g key={odds}>
            <line
              class={odds === 0 ? "axis" : "grid"}
              x1={left}
              x2={width - right}
              y1={y(odds)}
              y2={y(odds)}
            />
            <text class="chart-figure" x={left - 6} y={y(odds) + 5} text-anchor="end">
              {percent(odds)}
            </text>
          </g>
        ))}
        <line class="axis" x1={left} x2={left} y1={top} y2={floor} />
        {labels.map(({ tick, middle }) => (
          <g key={tick}>
            <line class="axis" x1={x(tick)} x2={x(tick)} y1={floor} y2={floor + 5} />
            <text class="chart-figure" x={middle} y={floor + 20} text-anchor="middle">
              {axisMoney(tick)}
            </text>
          </g>
        ))}
        {marks.map((mark, i) => (
          <line
            key={mark.id}
            class="extension"
            x1={x(mark.price)}
            x2={x(mark.price)}
            y1={y(mark.odds)}
            y2={lanes + i * lane + lane / 2 + 4}
          />
        ))}
        <path class="curve" d={path.join("")} />
        {marks.map((mark) => (
          <Mark key={mark.id} shape={mark.shape} x={x(mark.price)} y={y(mark.odds)} />
        ))}
        {marks.map((mark, i) => (
          <Dimension
            key={mark.id}
            label={`${mark.title} ${showMoney(mark.price, props.currency)}`}
            from={left}
            to={x(mark.price)}
            y={lanes + i * lane + lane / 2}
            right={width}
          />
        ))}
      </svg>
    </div>
  );
}

/** One price as a dimension line from the axis, its text on it or beyond it. */
function Dimension(props: { label: string; from: number; to: number; y: number; right: number }) {
  const { from, to, y } = props;
  const breadth = measure(props.label, type + 1, true);
  const place = onDimension(from, to, breadth, props.right);
  const room = to - from > 10;
  return (
    <g class="dimension">
      {room && <line x1={from} x2={to} y1={y} y2={y} />}
      {room && <path d={`M${to} ${y}l-8-3.5v7z`} />}
      {room && <path d={`M${from} ${y}l8-3.5v7z`} />}
      {place.inside && (
        <rect class="dimension-gap" x={place.x - 5} y={y - 10} width={breadth + 10} height={20} />
      )}
      <text
        class="chart-label"
        x={place.inside ? place.x + breadth / 2 : place.x}
        y={y + 5}
        text-anchor={place.inside ? "middle" : "start"}
      >
        {props.label}
      </text>
    </g>
  );
}
