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

/** The same where nothing need be told: emptied it is removed (null). */
export function SharePercentField(props: {
  id: string;
  label: string;
  hint?: string;
  points: number | undefined;
  low: number;
  high: number;
  keep: (points: number | null) => Promise<string | undefined>;
}) {
  const { points, keep, ...field } = props;
  return (
    <NumberField
      {...field}
      value={points === undefined ? undefined : points / 100}
      keep={(n) => keep(n === null ? null : Math.round(n * 100))}
    />
  );
}
