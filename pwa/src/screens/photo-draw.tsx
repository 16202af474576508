import { useId, useState } from "preact/hooks";
import { newId } from "../data/id.ts";
import {
  type MarkKind,
  MOST_MARKS,
  marksPath,
  marksValue,
  measured,
  type PhotoMark,
  span,
} from "../data/photo-marks.ts";
import { lastUndo, undo } from "../data/write.ts";
import { lengthTexts } from "../parts/length-text.ts";
import { PhotoLayer } from "../parts/photo-layer.tsx";
import { save } from "../parts/save.ts";
import { useWatch } from "../parts/use-watch.ts";
import { photoViewWords as words } from "../words/photo.ts";
import { LengthForm, WordsForm } from "./photo-mark-form.tsx";
import { PhotoSheet, type Stroke } from "./photo-sheet.tsx";

const tools = ["look", "arrow", "circle", "text", "scale", "measure"] as const;
type Tool = (typeof tools)[number];

/** Shorter than this share of the longer side a stroke was a tap. */
const TAP = 0.02;
const zooms = [1, 2, 4] as const;

export interface DrawProps {
  doc: string;
  /** Path of the photo's row. */
  path: string;
  marks: PhotoMark[];
  photo: { url: string; width: number; height: number };
  /** What the photo is called. */
  title: string;
  metric: boolean;
}

/** A picture with its marks, and the tools to draw more. */
export function PhotoDraw(props: DrawProps) {
  const { marks, photo } = props;
  const [tool, setTool] = useState<Tool>("look");
  const [stroke, setStroke] = useState<Stroke | undefined>(undefined);
  /** A mark that still lacks its words or its length. */
  const [open, setOpen] = useState<PhotoMark | undefined>(undefined);
  const [chosen, setChosen] = useState<string | undefined>(undefined);
  const [zoom, setZoom] = useState(0);
  const [said, setSaid] = useState("");
  const hint = useId();
  const label = words.label(props.title);
  const step = useWatch("undo", lastUndo).value;
  const scaled = marks.some((mark) => mark.kind === "scale");

  const keep = async (next: readonly PhotoMark[]): Promise<string | undefined> => {
    const why = await save(label, [{ doc: props.doc, path: marksPath(props.path), value: marksValue(next) }]);
    setSaid(why ?? "");
    return why;
  };
  const add = async (mark: PhotoMark): Promise<string | undefined> => {
    // A new scale takes the place of the old one.
    const others = mark.kind === "scale" ? marks.filter((m) => m.kind !== "scale") : marks;
    const why = await keep([...others, mark]);
    if (why !== undefined) return why;
    setOpen(undefined);
    setChosen(mark.id);
    return undefined;
  };
  const drawn = (made: Stroke) => {
    setStroke(undefined);
    if (tool === "look") return;
    if (marks.length >= MOST_MARKS && !(tool === "scale" && scaled)) {
      setSaid(words.full(MOST_MARKS));
      return;
    }
    const short = span(made, photo.width, photo.height) < TAP * Math.max(photo.width, photo.height);
    if (short && tool !== "text") {
      setSaid(words.tooShort);
      return;
    }
    setSaid("");
    setChosen(undefined);
    const mark: PhotoMark = { id: newId(), kind: tool, ...made };
    if (tool === "text" || tool === "scale") setOpen(mark);
    else void add(mark);
  };
  const change = (id: string, with_: Partial<PhotoMark>) =>
    keep(marks.map((mark) => (mark.id === id ? { ...mark, ...with_ } : mark)));
  const choose = (next: Tool) => {
    setTool(next);
    setOpen(undefined);
    setStroke(undefined);
    setSaid("");
  };

  const shown = [...marks];
  if (open) shown.push(open);
  else if (stroke && tool !== "look" && tool !== "text") shown.push({ id: "stroke", kind: tool, ...stroke });

  return (
    <>
      <PhotoSheet
        photo={photo}
        title={words.picture(props.title, marks.length)}
        describedBy={hint}
        drawing={tool !== "look" && !open}
        zoom={zooms[zoom] ?? 1}
        stroke={setStroke}
        drawn={drawn}
        move={(moved) => {
          const mark = marks.find((m) => m.id === chosen);
          if (mark) void change(mark.id, moved(mark));
        }}
      >
        <PhotoLayer
          marks={shown}
          width={photo.width}
          height={photo.height}
          size="full"
          chosen={open ? open.id : chosen}
        />
      </PhotoSheet>
      <fieldset class="photo-tools">
        <legend class="seen-by-reader">{words.tools}</legend>
        {tools.map((kind) => (
          <button
            key={kind}
            type="button"
            class="photo-tool"
            aria-pressed={tool === kind}
            disabled={kind === "measure" && !scaled}
            onClick={() => choose(kind)}
          >
            <ToolMark kind={kind} />
            {words.kinds[kind]}
          </button>
        ))}
      </fieldset>
      <p class="quiet" id={hint}>
        {words.hints[tool]} {!scaled && tool === "scale" ? "" : !scaled && words.needsScale}
        {tool !== "look" && <span class="keys"> {words.keys}</span>}
      </p>
      <p class="photo-said" role="status">
        {said}
      </p>
      {open?.kind === "text" && (
        <WordsForm
          key={open.id}
          mark={open}
          label={words.wordsHere}
          fresh
          keep={(text) => add({ ...open, label: text })}
          leave={() => setOpen(undefined)}
        />
      )}
      {open?.kind === "scale" && (
        <LengthForm
          key={open.id}
          metric={props.metric}
          keep={(length) => add({ ...open, length })}
          leave={() => setOpen(undefined)}
        />
      )}
      <div class="button-row">
        <button
          type="button"
          class="button"
          disabled={step?.label !== label}
          onClick={() => void undo().then(() => setChosen(undefined))}
        >
          {words.undo}
        </button>
        <button type="button" class="button" disabled={marks.length === 0} onClick={() => void keep([])}>
          {words.clear}
        </button>
        <button type="button" class="button" disabled={zoom === 0} onClick={() => setZoom(zoom - 1)}>
          {words.smaller}
        </button>
        <button
          type="button"
          class="button"
          disabled={zoom === zooms.length - 1}
          onClick={() => setZoom(zoom + 1)}
        >
          {words.larger}
        </button>
      </div>
      <MarkList
        {...props}
        chosen={chosen}
        choose={(id) => setChosen(id === chosen ? undefined : id)}
        keep={keep}
        change={change}
      />
    </>
  );
}

/** Every mark in words, for choosing one and taking it away. */
function MarkList(
  props: DrawProps & {
    chosen: string | undefined;
    choose: (id: string) => void;
    keep: (next: readonly PhotoMark[]) => Promise<string | undefined>;
    change: (id: string, with_: Partial<PhotoMark>) => Promise<string | undefined>;
  },
) {
  const { marks, photo } = props;
  if (marks.length === 0) return null;
  const texts = lengthTexts();
  const said = (mark: PhotoMark) => {
    const long = mark.kind === "measure" ? measured(mark, marks, photo.width, photo.height) : undefined;
    const length = mark.length ? texts.scale(mark.length) : long && texts.measured(long);
    const line = [length, mark.label].filter(Boolean).join(", ");
    return words.mark(words.kinds[mark.kind as MarkKind], line);
  };
  return (
    <section class="block" aria-label={words.marks(marks.length)}>
      <h2 class="block-title">{words.marks(marks.length)}</h2>
      {marks.some((mark) => mark.kind === "measure") && <p>{words.measured}</p>}
      <ul class="photo-marks">
        {marks.map((mark) => (
          <li key={mark.id}>
            <button
              type="button"
              class="photo-mark"
              dir="auto"
              aria-pressed={mark.id === props.chosen}
              onClick={() => props.choose(mark.id)}
            >
              {said(mark)}
            </button>
            {mark.id === props.chosen && (
              <div class="block">
                <WordsForm
                  mark={mark}
                  label={mark.kind === "text" ? words.wordsHere : words.wordsOf}
                  keep={(text) => props.change(mark.id, { label: text })}
                />
                <button
                  type="button"
                  class="button button-away"
                  onClick={() => void props.keep(marks.filter((m) => m.id !== mark.id))}
                >
                  {words.removeMark}
                </button>
              </div>
            )}
          </li>
        ))}
      </ul>
      <p class="quiet">{words.apart}</p>
    </section>
  );
}

const drawings: Record<Tool, string> = {
  look: "M2 12c5-8 15-8 20 0c-5 8-15 8-20 0M12 9a3 3 0 1 0 .01 0",
  arrow: "M5 19 19 5M10 5h9v9",
  circle: "M12 5a9 7 0 1 0 .01 0",
  text: "M5 6V4h14v2M12 4v16M9 20h6",
  scale: "M3 12h18M3 7v10M21 7v10M9 10v4M15 10v4",
  measure: "M4 20 20 4M1.5 17.5l5 5M17.5 1.5l5 5",
};

const ToolMark = ({ kind }: { kind: Tool }) => (
  <svg viewBox="0 0 24 24" aria-hidden="true" fill="none" stroke="currentColor" stroke-width="2.2">
    <path d={drawings[kind]} />
  </svg>
);
