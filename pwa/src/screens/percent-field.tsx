import { NumberField } from "../parts/field.tsx";

/** A share kept in basis points (1/100 %), written as per cent. */
export function PercentField(props: {
  id: string;
  label: string;
  hint?: string;
  points: number;
  /** Bounds in per cent. */
  low: number;
  high: number;
  keep: (points: number) => Promise<string | undefined>;
}) {
  return (
    <NumberField
      id={props.id}
      label={props.label}
      hint={props.hint}
      value={props.points / 100}
      low={props.low}
      high={props.high}
      required
      keep={(n) => props.keep(Math.round((n ?? 0) * 100))}
    />
  );
}
