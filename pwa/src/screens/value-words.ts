/** What a stored path is called and how its value reads, for conflicts. */
import { percent, plain } from "../charts/format.ts";
import { readMarks } from "../data/photo-marks.ts";
import { rangeOf } from "../data/shape.ts";
import { STANDS } from "../data/stand.ts";
import type { Json } from "../data/value.ts";
import type { Catalogue, Choice, Rubric } from "../generated/types.ts";
import { showMoney } from "../parts/money.ts";
import { findWords } from "../words/find.ts";
import { conflictWords, listingWords } from "../words/listing.ts";
import { photoViewWords } from "../words/photo.ts";
import { photoWords } from "../words/photos.ts";
import { worthWords } from "../words/worth.ts";
import { showRange } from "./amounts.tsx";

interface Known {
  catalogue: Catalogue | undefined;
  rubric: Rubric | undefined;
  currency: string;
}

const titleOf = (choices: Choice[] | undefined, id: string) => choices?.find((c) => c.id === id)?.title ?? id;

/** The title of a check, or its id where the rubric does not know it. */
export function checkTitle(rubric: Rubric | undefined, id: string): string {
  for (const section of rubric?.sections ?? []) {
    const check = section.checks.find((c) => c.id === id);
    if (check) return check.title;
  }
  return id;
}

/** The name of a path of a listing on the screens. */
export function pathTitle(path: string, rubric: Rubric | undefined): string {
  const [head = "", id = "", field = ""] = path.split("/");
  if (head === "finding") {
    const title = checkTitle(rubric, id);
    if (field === "answer") return conflictWords.answer(title);
    if (field === "measured") return conflictWords.measured(title);
    if (field === "note") return conflictWords.findingNote(title);
    if (path.endsWith("/marks")) return photoViewWords.label(title);
    return title;
  }
  if (head === "photo" && path.endsWith("/marks")) return photoViewWords.label(photoWords.title);
  if (head === "fact") return rubric?.facts?.find((f) => f.id === id)?.ask ?? id;
  if (head === "asked") return rubric?.visit?.questions.find((q) => q.id === id)?.ask ?? id;
  if (head === "adjust") return worthWords.setAdjust(id);
  return listingWords.labels[path] ?? listingWords.labels[head] ?? path;
}

/** A stored value as a line of text. */
export function valueText(path: string, value: Json, known: Known): string {
  if (value === null) return conflictWords.empty;
  if (typeof value === "boolean") return value ? conflictWords.yes : conflictWords.no;
  const [head = "", id = ""] = path.split("/");
  if (typeof value === "number") return head === "asking" ? showMoney(value, known.currency) : String(value);
  if (typeof value === "string") {
    if (head === "seller") return titleOf(known.catalogue?.sellers, value);
    if (head === "fact") return titleOf(known.rubric?.facts?.find((f) => f.id === id)?.options, value);
    return value;
  }
  if (Array.isArray(value)) return JSON.stringify(value);
  return objectText(value, known);
}

function objectText(value: { [key: string]: Json }, known: Known): string {
  const { catalogue, currency } = known;
  if (typeof value.grade === "number") {
    return conflictWords.grade(value.grade, catalogue?.grades[value.grade] ?? "");
  }
  const stand = STANDS.find((one) => one === value.state);
  if (stand) return findWords.stands[stand];
  if (typeof value.skipped === "string") {
    return conflictWords.skipped(titleOf(catalogue?.reasons, value.skipped));
  }
  const { well, ordinary, neglected } = value;
  if (typeof well === "number" && typeof ordinary === "number" && typeof neglected === "number") {
    return conflictWords.care(
      percent(well / 10_000),
      percent(ordinary / 10_000),
      percent(neglected / 10_000),
    );
  }
  if (typeof value.n === "number" && typeof value.unit === "string") return `${value.n} ${value.unit}`.trim();
  const drawn = readMarks(value);
  if (drawn) return photoViewWords.marks(drawn.marks.length);
  const range = rangeOf(value);
  if (range) return showRange(range, currency);
  if (typeof value.id === "string") {
    return catalogue?.rubrics.find((r) => r.id === value.id)?.kind ?? value.id;
  }
  return Object.entries(value)
    .map(([name, member]) => memberText(name, member, known))
    .filter((text) => text !== "")
    .join(", ");
}

/** A member of a stored object, told by its name where the value alone would say nothing. */
function memberText(name: string, value: Json, known: Known): string {
  if (value === null) return "";
  if (typeof value === "object" && !Array.isArray(value)) return objectText(value, known);
  if (name === "off") return value === true ? conflictWords.off : "";
  if (typeof value === "number") {
    const label = conflictWords.members.get(name);
    const figure = name === "points" ? conflictWords.percent(plain(value / 100)) : plain(value);
    return label ? label(figure) : figure;
  }
  return String(value);
}
