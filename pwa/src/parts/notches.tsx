/** A grade as five short strokes, as many filled as the grade; always with number and word. */
const strokes = [0, 1, 2, 3, 4];

export function Notches({ grade, word, bare }: { grade: number | null; word?: string; bare?: boolean }) {
  return (
    <span class="notches">
      <svg class="notch-strokes" viewBox="0 0 42 16" aria-hidden="true">
        {strokes.map((n) => (
          <rect
            key={n}
            class={grade !== null && n < grade ? "notch notch-filled" : "notch"}
            x={1 + n * 8.4}
            y={1}
            width={5.4}
            height={14}
          />
        ))}
      </svg>
      {!bare && grade !== null && (
        <span class="notch-word">
          <b>{grade}</b> {word}
        </span>
      )}
    </span>
  );
}
