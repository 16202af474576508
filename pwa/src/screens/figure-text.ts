import type { LimitFigure } from "../generated/types.ts";
import { locale as spoken } from "../words/tongue.ts";

/** in2 and mm3 as they are written by hand. */
const unitText = (unit: string) =>
  unit.replace(
    /^(in|ft|mm|cm|m)([23])\b/,
    (_, base: string, power: string) => base + (power === "2" ? "²" : "³"),
  );

/** A computed figure for reading: four significant digits, never in powers of ten; a year stays 2004. */
export function figure(n: number, unit: string, locale: string = spoken()): string {
  const digits = new Intl.NumberFormat(locale, { maximumSignificantDigits: 4, useGrouping: "min2" }).format(
    n === 0 ? 0 : n,
  );
  return unit === "" ? digits : `${digits} ${unitText(unit)}`;
}

/** What a further figure says: its words where it has any. */
export function figureText(f: LimitFigure): string {
  if (f.text) return f.text;
  return f.value === undefined ? "" : figure(f.value, f.unit ?? "");
}

/** Figures that are read together, in the order they come; those of no group under "". */
export interface FigureGroup {
  group: string;
  figures: LimitFigure[];
}

/** Runs of figures of one group. */
export function grouped(figures: readonly LimitFigure[]): FigureGroup[] {
  const out: FigureGroup[] = [];
  for (const f of figures) {
    const last = out.at(-1);
    if (last && last.group === (f.group ?? "")) last.figures.push(f);
    else out.push({ group: f.group ?? "", figures: [f] });
  }
  return out;
}
