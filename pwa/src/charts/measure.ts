import { textWidth } from "./scale.ts";

let pen: CanvasRenderingContext2D | null | undefined;

/** Breadth of a text in the page's own font, pixels; estimated where nothing can draw. */
export function measure(text: string, size: number, bold = false): number {
  if (pen === undefined) pen = document.createElement("canvas").getContext("2d");
  if (!pen) return textWidth(text, size) * (bold ? 1.1 : 1);
  pen.font = `${bold ? 700 : 400} ${size}px ${getComputedStyle(document.body).fontFamily}`;
  return pen.measureText(text).width;
}
