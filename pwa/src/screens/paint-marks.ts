import type { Paint } from "../data/photo-copy.ts";
import { type PhotoMark, paintMarks } from "../data/photo-marks.ts";
import { lengthTexts } from "../parts/length-text.ts";

/** Drawing the marks of a photo onto its copy, lengths written as the paper's language writes them. */
export function paintFor(marks: readonly PhotoMark[] | undefined, language: string): Paint | undefined {
  if (!marks || marks.length === 0) return undefined;
  const texts = lengthTexts(language);
  return {
    id: `${language}${JSON.stringify(marks)}`,
    draw: (context, width, height) => paintMarks(context, marks, width, height, texts),
  };
}
