import { plain } from "../charts/format.ts";
import type { Paint } from "../data/photo-copy.ts";
import { type PhotoMark, paintMarks } from "../data/photo-marks.ts";

/** Drawing the marks of a photo onto its copy, lengths written as the paper's language writes them. */
export function paintFor(marks: readonly PhotoMark[] | undefined, language: string): Paint | undefined {
  if (!marks || marks.length === 0) return undefined;
  const texts = {
    scale: ({ n, unit }: { n: number; unit: string }) => `${plain(n, language)} ${unit}`,
    measured: ({ n, give, unit }: { n: number; give: number; unit: string }) =>
      `≈ ${figure(n, give, language)} ± ${figure(give, give, language)} ${unit}`,
  };
  return {
    id: `${language}${JSON.stringify(marks)}`,
    draw: (context, width, height) => paintMarks(context, marks, width, height, texts),
  };
}

/** No more digits than what it may be off by leaves. */
function figure(n: number, give: number, language: string): string {
  const step = give > 0 ? 10 ** Math.floor(Math.log10(give)) : 0.001;
  return plain(Math.round(n / step) * step, language);
}
