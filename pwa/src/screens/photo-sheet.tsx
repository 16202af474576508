import type { ComponentChildren } from "preact";
import { useRef } from "preact/hooks";
import type { End, PhotoMark } from "../data/photo-marks.ts";

export type Stroke = Pick<PhotoMark, "from" | "to">;

/** How far an arrow key moves an end, and where a mark placed by key lies, as shares of the picture. */
const STEP = 0.01;
const PLACED: Stroke = { from: [0.4, 0.55], to: [0.6, 0.45] };

const inside = (share: number): number => Math.min(1, Math.max(0, share));

/** The picture itself, on which one finger draws while `drawing`; else it scrolls and is pinched as a page is. */
export function PhotoSheet(props: {
  photo: { url: string; width: number; height: number };
  title: string;
  describedBy: string;
  drawing: boolean;
  zoom: number;
  /** Told while the finger is down. */
  stroke: (stroke: Stroke | undefined) => void;
  drawn: (stroke: Stroke) => void;
  /** Asked to move the chosen mark. */
  move: (moved: (mark: PhotoMark) => Stroke) => void;
  children: ComponentChildren;
}) {
  const { photo } = props;
  const sheet = useRef<HTMLDivElement>(null);
  /** Where the one finger that draws came down; a second finger draws nothing. */
  const down = useRef<{ pointer: number; from: End } | undefined>(undefined);
  const at = (e: PointerEvent): End => {
    const box = sheet.current?.getBoundingClientRect();
    if (!box || box.width === 0 || box.height === 0) return [0, 0];
    return [inside((e.clientX - box.left) / box.width), inside((e.clientY - box.top) / box.height)];
  };
  const begin = (e: PointerEvent) => {
    if (!props.drawing || down.current || (e.pointerType === "mouse" && e.button !== 0)) return;
    sheet.current?.setPointerCapture(e.pointerId);
    down.current = { pointer: e.pointerId, from: at(e) };
  };
  const go = (e: PointerEvent) => {
    if (down.current?.pointer === e.pointerId) props.stroke({ from: down.current.from, to: at(e) });
  };
  const end = (e: PointerEvent) => {
    if (down.current?.pointer !== e.pointerId) return;
    const { from } = down.current;
    down.current = undefined;
    props.drawn({ from, to: at(e) });
  };
  const drop = (e: PointerEvent) => {
    if (down.current?.pointer !== e.pointerId) return;
    down.current = undefined;
    props.stroke(undefined);
  };
  const key = (e: KeyboardEvent) => {
    if (e.key === "Enter" && props.drawing) {
      e.preventDefault();
      props.drawn(PLACED);
      return;
    }
    const by = arrows[e.key];
    if (!by || e.ctrlKey || e.metaKey || e.altKey) return;
    e.preventDefault();
    const moved = (end: End): End => [inside(end[0] + by[0] * STEP), inside(end[1] + by[1] * STEP)];
    props.move(({ from, to }) => (e.shiftKey ? { from: moved(from), to } : { from, to: moved(to) }));
  };
  return (
    <div class="photo-stage">
      <div
        class={props.drawing ? "photo-sheet photo-sheet-drawing" : "photo-sheet"}
        ref={sheet}
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: keys draw here as a finger does
        tabIndex={0}
        aria-label={props.title}
        aria-describedby={props.describedBy}
        style={{ "--aspect": photo.width / photo.height, "--zoom": props.zoom }}
        onPointerDown={begin}
        onPointerMove={go}
        onPointerUp={end}
        onPointerCancel={drop}
        onKeyDown={key}
      >
        <img src={photo.url} alt="" draggable={false} />
        {props.children}
      </div>
    </div>
  );
}

const arrows: Record<string, End> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
