import { EDGE, type Figure, figures, INK, inkWidth, LIGHT, type PhotoMark } from "../data/photo-marks.ts";
import { lengthTexts } from "./length-text.ts";

/** How long the longer side is drawn: the smaller, the thicker the ink against the picture. */
const DRAWN = { thumb: 140, side: 300, full: 1000 };

/** Marks over a picture: ink with a light edge, so that they stand out on dark and on light. */
export function PhotoLayer(props: {
  marks: readonly PhotoMark[];
  /** Of the picture, in its points. */
  width: number;
  height: number;
  size: keyof typeof DRAWN;
  /** Id of the one that is chosen. */
  chosen?: string | undefined;
}) {
  const share = DRAWN[props.size] / Math.max(props.width, props.height, 1);
  const width = props.width * share;
  const height = props.height * share;
  const texts = lengthTexts();
  const ink = inkWidth(width, height);
  const drawn = props.marks.map((mark) => ({
    mark,
    // On a thumbnail lengths could not be read.
    parts: figures(mark, props.marks, width, height, texts).filter(
      (figure) => props.size !== "thumb" || figure.kind !== "text" || mark.kind === "text",
    ),
  }));
  return (
    <svg
      class={`photo-layer photo-layer-${props.size}`}
      viewBox={`0 0 ${width} ${height}`}
      preserveAspectRatio={props.size === "thumb" ? "xMidYMid slice" : "none"}
      aria-hidden="true"
      fill="none"
      stroke-linecap="round"
      stroke-linejoin="round"
    >
      {drawn.map(({ mark, parts }) => (
        <g key={mark.id} stroke={LIGHT} stroke-width={ink * (mark.id === props.chosen ? EDGE * 2 : EDGE)}>
          {parts.map(shown)}
        </g>
      ))}
      {drawn.map(({ mark, parts }) => (
        <g key={mark.id} data-mark={mark.kind} stroke={INK} stroke-width={ink}>
          {parts.map((figure) => (figure.kind === "text" ? written(figure) : shown(figure)))}
        </g>
      ))}
    </svg>
  );
}

const shown = (figure: Figure) => {
  switch (figure.kind) {
    case "line":
      return <path d={`M${figure.points.map(([x, y]) => `${x} ${y}`).join("L")}`} />;
    case "ellipse":
      return <ellipse cx={figure.at[0]} cy={figure.at[1]} rx={figure.rx} ry={figure.ry} />;
    default:
      return <text {...place(figure)}>{figure.text}</text>;
  }
};

const written = (figure: Extract<Figure, { kind: "text" }>) => (
  <text {...place(figure)} fill={INK} stroke="none">
    {figure.text}
  </text>
);

const place = (figure: Extract<Figure, { kind: "text" }>) => ({
  x: figure.at[0],
  y: figure.at[1],
  "font-size": figure.size,
  "font-weight": 700,
  "text-anchor": figure.anchor,
  "dominant-baseline": "central",
});
