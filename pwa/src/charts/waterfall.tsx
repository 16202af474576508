import type { Step } from "../generated/types.ts";
import { linear, niceDomain } from "./scale.ts";
import { useWidth } from "./use-width.ts";

export interface Strip {
  from: number;
  to: number;
  /** A total stands on zero; a step hangs between two totals. */
  total: boolean;
}

/** Where each step's bar begins and ends, cents: the first is a total, and the last where the fall ends in an offer. */
export function strips(steps: readonly Step[], ends: boolean): Strip[] {
  return steps.map((step, i) => {
    const total = i === 0 || (ends && i === steps.length - 1);
    return { from: total ? 0 : (steps[i - 1]?.total ?? 0), to: step.total, total };
  });
}

/** The money axis that all strips of one waterfall share, cents. */
export function stripDomain(steps: readonly Step[]): [number, number] {
  return niceDomain(
    steps.map((s) => s.total),
    5,
  );
}

const height = 24;

/** One step of the waterfall; the rows stand so close that the strips read as one drawing. */
export function WaterfallStrip(props: { strip: Strip; domain: readonly [number, number]; label: string }) {
  const { ref, width } = useWidth<HTMLDivElement>(328);
  const x = linear(props.domain, [1, width - 1]);
  const [a, b] = [x(props.strip.from), x(props.strip.to)];
  const lost = props.strip.to < props.strip.from;
  const kind = props.strip.total ? "total" : lost ? "loss" : "gain";
  return (
    <div class="fall" ref={ref}>
      <svg
        role="img"
        aria-label={props.label}
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
      >
        <line class="fall-zero" x1={x(0)} x2={x(0)} y1={0} y2={height} />
        {!props.strip.total && <line class="fall-link" x1={a} x2={a} y1={0} y2={4} />}
        <rect
          class={`fall-bar fall-${kind}`}
          x={Math.min(a, b)}
          y={4}
          width={Math.max(2, Math.abs(b - a))}
          height={height - 8}
        />
        <line class="fall-link" x1={b} x2={b} y1={height - 4} y2={height} />
      </svg>
    </div>
  );
}
