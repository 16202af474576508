import { useId } from "preact/hooks";
import { linear } from "./scale.ts";
import { useWidth } from "./use-width.ts";

/** The fillings of a stacked bar, told apart by pattern and not by colour alone. */
export type Filling = "solid" | "slanted" | "dotted" | "upright" | "blank";

export interface StackPart {
  id: string;
  filling: Filling;
  /** cents, 0 or more */
  amount: number;
}

const height = 34;

/** One part as it stands on the bar, cents. */
export interface Placed extends StackPart {
  from: number;
}

/** The parts one after the other; what is nothing has no place. */
export function placed(parts: readonly StackPart[]): Placed[] {
  const out: Placed[] = [];
  let from = 0;
  for (const part of parts) {
    if (part.amount <= 0) continue;
    out.push({ ...part, from });
    from += part.amount;
  }
  return out;
}

/** A sum by its causes; `most` is the end of the axis that all bars side by side share. */
export function StackBar(props: { parts: readonly StackPart[]; most: number; label: string }) {
  const { ref, width } = useWidth<HTMLDivElement>(328);
  const id = useId();
  const x = linear([0, Math.max(props.most, 1)], [1, width - 1]);
  return (
    <div class="fall" ref={ref}>
      <svg
        role="img"
        aria-label={props.label}
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
      >
        <Fillings id={id} />
        {placed(props.parts).map((p) => (
          <Filled
            key={p.id}
            id={id}
            filling={p.filling}
            x={x(p.from)}
            y={4}
            width={Math.max(x(p.from + p.amount) - x(p.from), 1)}
            height={height - 8}
          />
        ))}
      </svg>
    </div>
  );
}

/** A filling beside its words. */
export function FillingKey({ filling }: { filling: Filling }) {
  const id = useId();
  return (
    <svg class="filling-key" viewBox="0 0 24 18" aria-hidden="true">
      <Fillings id={id} />
      <Filled id={id} filling={filling} x={1} y={1} width={22} height={16} />
    </svg>
  );
}

function Filled(props: {
  id: string;
  filling: Filling;
  x: number;
  y: number;
  width: number;
  height: number;
}) {
  const { id, filling, ...box } = props;
  const patterned = filling !== "solid" && filling !== "blank";
  return (
    <g>
      <rect class={`filling filling-${filling}`} {...box} />
      {patterned && <rect class="filling-over" fill={`url(#${id}-${filling})`} {...box} />}
    </g>
  );
}

function Fillings({ id }: { id: string }) {
  return (
    <defs>
      <pattern
        id={`${id}-slanted`}
        width="6"
        height="6"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <line class="filling-line" x1="0" x2="0" y1="0" y2="6" />
      </pattern>
      <pattern id={`${id}-dotted`} width="6" height="6" patternUnits="userSpaceOnUse">
        <circle class="filling-dot" cx="3" cy="3" r="1.5" />
      </pattern>
      <pattern id={`${id}-upright`} width="5" height="6" patternUnits="userSpaceOnUse">
        <line class="filling-line" x1="2.5" x2="2.5" y1="0" y2="6" />
      </pattern>
    </defs>
  );
}
