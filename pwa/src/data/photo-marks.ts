/**
 * What is drawn over a photo: kept beside the picture, never in it. Ends are shares of the
 * picture's width and height, so that one set of marks fits every copy of it.
 */
import type { PhotoMark, Quantity } from "../generated/types.ts";
import { rightWords } from "../words/file.ts";
import { compact } from "./reader.ts";
import { isRecord, quantityOf, textOf } from "./shape.ts";
import type { Json, JsonInput } from "./value.ts";

export type { PhotoMark };
/** Shares of width and height. */
export type End = [x: number, y: number];
export type MarkKind = "arrow" | "circle" | "text" | "scale" | "measure";

/** The same bounds as the engine holds an appraisal file to (checkphoto.go). */
export const MOST_MARKS = 40;
export const MOST_LABEL = 60;
const MOST_LENGTH = 1e6;
export const LENGTH_UNITS = ["in", "ft", "mm", "cm", "m"] as const;
const KINDS: readonly string[] = ["arrow", "circle", "text", "scale", "measure"];

/** Path of the marks of a photo, from the photo's own path. */
export const marksPath = (photo: string): string => `${photo}/marks`;

/** The value of a row of marks. */
export const marksValue = (marks: readonly PhotoMark[]): JsonInput =>
  marks.length === 0
    ? null
    : {
        shapes: marks.map(({ id, kind, from, to, label, length }) => ({
          ...{ id, kind, from, to },
          ...(label ? { label } : {}),
          ...(length ? { length: { n: length.n, unit: length.unit } } : {}),
        })),
      };

/** The marks in a row; one of the wrong shape, or one too many, is left out and counted. */
export function readMarks(value: Json | undefined): { marks: PhotoMark[]; left: number } | undefined {
  if (!isRecord(value) || !Array.isArray(value.shapes)) return undefined;
  const { shapes } = value;
  const marks: PhotoMark[] = [];
  for (const shape of shapes) {
    const mark = markOf(shape);
    if (!mark || marks.length === MOST_MARKS) continue;
    if (marks.some((m) => m.id === mark.id || (m.kind === "scale" && mark.kind === "scale"))) continue;
    marks.push(mark);
  }
  return { marks, left: shapes.length - marks.length };
}

/** What would be right where `left` marks were left out. */
export const marksRight = (left: number): string => rightWords.marksLeft(MOST_MARKS, left);

function markOf(value: Json): PhotoMark | undefined {
  if (!isRecord(value)) return undefined;
  const { id, kind } = value;
  const from = endOf(value.from);
  const to = endOf(value.to);
  if (typeof id !== "string" || id === "" || id.length > 40 || !from || !to) return undefined;
  if (typeof kind !== "string" || !KINDS.includes(kind)) return undefined;
  const label = textOf(value.label);
  if ([...(label ?? "")].length > MOST_LABEL || (kind === "text" && !label)) return undefined;
  const length = kind === "scale" ? lengthOf(value.length) : undefined;
  if (kind === "scale" && (!length || (from[0] === to[0] && from[1] === to[1]))) return undefined;
  return compact<PhotoMark>({ id, kind, from, to, label: label || undefined, length });
}

const isShare = (n: Json | undefined): n is number => typeof n === "number" && n >= 0 && n <= 1;

function endOf(value: Json | undefined): End | undefined {
  if (!Array.isArray(value) || value.length !== 2) return undefined;
  const [x, y] = value;
  return isShare(x) && isShare(y) ? [x, y] : undefined;
}

function lengthOf(value: Json | undefined): Quantity | undefined {
  const length = quantityOf(value);
  const known = length && (LENGTH_UNITS as readonly string[]).includes(length.unit);
  return known && length.n > 0 && length.n <= MOST_LENGTH ? length : undefined;
}

/** A length read from a picture: n give or take `give`, in the unit of the scale. */
export interface Measured {
  n: number;
  give: number;
  unit: string;
}

/** How far off a fingertip puts the end of a line, as a share of the picture's longer side. A judgement. */
const PLACED = 0.004;

/**
 * How long a line is by the scale drawn on the same picture; undefined without a scale.
 * Right only for what lies as far away as the scale, square to the camera. `give` takes in where
 * the four ends were put and nothing else.
 */
export function measured(
  line: Pick<PhotoMark, "from" | "to">,
  marks: readonly PhotoMark[],
  width: number,
  height: number,
): Measured | undefined {
  const scale = marks.find((mark) => mark.kind === "scale");
  if (!scale?.length) return undefined;
  const known = span(scale, width, height);
  const own = span(line, width, height);
  const n = (scale.length.n * own) / known;
  // Both ends of each line, and the errors of both lines as shares.
  const off = PLACED * Math.max(width, height) * Math.SQRT2;
  const give = (scale.length.n / known) * Math.hypot(off, (off * own) / known);
  return Number.isFinite(n) && Number.isFinite(give) ? { n, give, unit: scale.length.unit } : undefined;
}

/** Length of a line in points of the picture. */
export const span = ({ from, to }: Pick<PhotoMark, "from" | "to">, width: number, height: number): number =>
  Math.hypot((to[0] - from[0]) * width, (to[1] - from[1]) * height);

/** What a mark consists of on a picture of some size, in its points. */
export type Figure =
  | { kind: "line"; points: readonly End[] }
  | { kind: "ellipse"; at: End; rx: number; ry: number }
  | { kind: "text"; at: End; text: string; size: number; anchor: "start" | "middle" | "end" };

/** How lengths are written; the caller's, since data knows no language. */
export interface LengthTexts {
  scale(length: Quantity): string;
  measured(length: Measured): string;
}

/** Thickness of the ink on a picture of this size; its light edge is EDGE times as thick. */
export const inkWidth = (width: number, height: number): number =>
  Math.max(1.5, Math.max(width, height) / 220);
export const EDGE = 2.4;
export const INK = "#14202a";
export const LIGHT = "#ffffff";

/** The lines and texts of one mark, in points of the picture. */
export function figures(
  mark: PhotoMark,
  marks: readonly PhotoMark[],
  width: number,
  height: number,
  texts: LengthTexts,
): Figure[] {
  const at = (end: End): End => [end[0] * width, end[1] * height];
  const from = at(mark.from);
  const to = at(mark.to);
  const ink = inkWidth(width, height);
  const size = ink * 8;
  const out: Figure[] = [];
  const write = (text: string | undefined, place: End) => {
    if (text) out.push(textAt(text, place, size, width, height));
  };
  switch (mark.kind) {
    case "arrow":
      out.push({ kind: "line", points: [from, to] }, ...head(from, to, ink));
      write(mark.label, from);
      break;
    case "circle": {
      const rx = Math.abs(to[0] - from[0]) / 2;
      const ry = Math.abs(to[1] - from[1]) / 2;
      const middle: End = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
      out.push({ kind: "ellipse", at: middle, rx, ry });
      write(mark.label, [middle[0], middle[1] + ry + size * 0.7]);
      break;
    }
    case "text":
      write(mark.label, to);
      break;
    default: {
      out.push({ kind: "line", points: [from, to] }, ...ends(from, to, ink));
      const length = mark.kind === "scale" ? undefined : measured(mark, marks, width, height);
      const said = mark.length ? texts.scale(mark.length) : length && texts.measured(length);
      const text = [said, mark.label].filter(Boolean).join(" ");
      write(text, beside(from, to, text, size));
    }
  }
  return out;
}

/** The two barbs of an arrow, short on a short one. */
function head(from: End, to: End, ink: number): Figure[] {
  const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (long === 0) return [];
  const barb = Math.min(ink * 6, long / 2);
  const angle = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const end = (turn: number): End => [
    to[0] - barb * Math.cos(angle + turn),
    to[1] - barb * Math.sin(angle + turn),
  ];
  return [{ kind: "line", points: [end(0.5), to, end(-0.5)] }];
}

/** Where the middle of a text lies clear of a line: above a flat one, to the right of a steep one. */
function beside(from: End, to: End, text: string, size: number): End {
  const half = ([...text].length * LETTER * size) / 2;
  const [across, down] = [Math.abs(to[0] - from[0]), Math.abs(to[1] - from[1])];
  const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  if (down > across) return [x + size * 0.6 + half + (size / 2) * (across / down), y];
  const rise = across === 0 ? 0 : (down / across) * Math.min(half, across / 2);
  return [x, y - size * 0.8 - rise];
}

/** A stroke across each end of a measured line, as on a drawing. */
function ends(from: End, to: End, ink: number): Figure[] {
  const angle = Math.atan2(to[1] - from[1], to[0] - from[0]) + Math.PI / 2;
  const dx = ink * 3 * Math.cos(angle);
  const dy = ink * 3 * Math.sin(angle);
  return [from, to].map(([x, y]) => ({
    kind: "line",
    points: [
      [x - dx, y - dy],
      [x + dx, y + dy],
    ],
  }));
}

/** Width of a letter against its size; a guess, since nothing here knows the font. */
const LETTER = 0.55;

/** A text near its place and inside of the picture, as far as its width can be told without a font. */
function textAt(text: string, place: End, most: number, width: number, height: number): Figure {
  const letters = [...text].length * LETTER;
  const size = Math.min(most, (width * 0.96) / letters);
  const half = (letters * size) / 2;
  const y = Math.min(Math.max(place[1], size * 0.8), height - size * 0.8);
  const margin = width * 0.02;
  if (place[0] < half + margin) return { kind: "text", at: [margin, y], text, size, anchor: "start" };
  if (place[0] > width - half - margin)
    return { kind: "text", at: [width - margin, y], text, size, anchor: "end" };
  return { kind: "text", at: [place[0], y], text, size, anchor: "middle" };
}

/** What painting needs of a canvas's context. */
export type Painter = Pick<
  CanvasRenderingContext2D,
  | "save"
  | "restore"
  | "beginPath"
  | "moveTo"
  | "lineTo"
  | "ellipse"
  | "stroke"
  | "strokeText"
  | "fillText"
  | "lineWidth"
  | "lineCap"
  | "lineJoin"
  | "strokeStyle"
  | "fillStyle"
  | "font"
  | "textAlign"
  | "textBaseline"
>;

/** Paints the marks over a copy of the picture that fills width by height. The original is never painted on. */
export function paintMarks(
  context: Painter,
  marks: readonly PhotoMark[],
  width: number,
  height: number,
  texts: LengthTexts,
): void {
  const ink = inkWidth(width, height);
  context.save();
  context.lineCap = "round";
  context.lineJoin = "round";
  context.textBaseline = "middle";
  const all = marks.flatMap((mark) => figures(mark, marks, width, height, texts));
  // All edges first: no mark's edge then covers another's ink.
  for (const inked of [false, true]) {
    context.strokeStyle = inked ? INK : LIGHT;
    context.fillStyle = INK;
    for (const figure of all) {
      context.lineWidth = inked ? ink : ink * EDGE;
      paint(context, figure, inked);
    }
  }
  context.restore();
}

function paint(context: Painter, figure: Figure, inked: boolean): void {
  if (figure.kind === "text") {
    context.font = `700 ${figure.size}px system-ui, sans-serif`;
    context.textAlign = figure.anchor === "middle" ? "center" : figure.anchor;
    if (inked) context.fillText(figure.text, figure.at[0], figure.at[1]);
    else context.strokeText(figure.text, figure.at[0], figure.at[1]);
    return;
  }
  context.beginPath();
  if (figure.kind === "ellipse") {
    context.ellipse(figure.at[0], figure.at[1], figure.rx, figure.ry, 0, 0, 2 * Math.PI);
  } else {
    for (const [i, [x, y]] of figure.points.entries()) {
      if (i === 0) context.moveTo(x, y);
      else context.lineTo(x, y);
    }
  }
  context.stroke();
}
