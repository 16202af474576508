/** The four marks of the odds curve: told apart by shape, not by colour. */
export type MarkShape = "disc" | "square" | "triangle" | "diamond";

const outlines: Record<Exclude<MarkShape, "disc">, string> = {
  square: "M-5.5-5.5h11v11h-11z",
  triangle: "M0-7 7 5.5H-7z",
  diamond: "M0-8 8 0 0 8-8 0z",
};

export function Mark({ shape, x, y }: { shape: MarkShape; x: number; y: number }) {
  const at = `translate(${x} ${y})`;
  if (shape === "disc") return <circle class={`mark mark-${shape}`} r={6} transform={at} />;
  return <path class={`mark mark-${shape}`} d={outlines[shape]} transform={at} />;
}

/** A mark beside its words. */
export function MarkKey({ shape }: { shape: MarkShape }) {
  return (
    <svg class="mark-key" viewBox="0 0 20 20" aria-hidden="true">
      <Mark shape={shape} x={10} y={10} />
    </svg>
  );
}
