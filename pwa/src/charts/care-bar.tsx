import { linear } from "./scale.ts";
import { useWidth } from "./use-width.ts";

const count = 20;
const height = 30;
const strokes = [...Array(count).keys()];

/** How many notches stand for a share: some for any, all only for certainty. */
export function notchesFilled(share: number): number {
  if (share <= 0 || share >= 1) return share <= 0 ? 0 : count;
  return Math.min(Math.max(Math.round(share * count), 1), count - 1);
}

/** A chance as notches, with a pointer at what it was before; its words stand beside it. */
export function CareBar({ share, before }: { share: number; before: number }) {
  const { ref, width } = useWidth<HTMLDivElement>(328);
  const x = linear([0, count], [8, width - 8]);
  const filled = notchesFilled(share);
  const pitch = x(1) - x(0);
  return (
    <div class="fall" ref={ref}>
      <svg aria-hidden="true" width={width} height={height} viewBox={`0 0 ${width} ${height}`}>
        {strokes.map((n) => (
          <rect
            key={n}
            class={n < filled ? "notch notch-filled" : "notch"}
            x={x(n) + pitch * 0.2}
            y={1}
            width={pitch * 0.6}
            height={16}
          />
        ))}
        <path class="care-before" d="M0 0 6 10H-6z" transform={`translate(${x(before * count)} 19)`} />
      </svg>
    </div>
  );
}
