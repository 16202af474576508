/** What a stored path is called and how its value reads, for conflicts. */
import { percent } from "../charts/format.ts";
import type { Json } from "../data/value.ts";
import type { Catalogue, Choice, Rubric } from "../generated/types.ts";
import { showMoney } from "../parts/money.ts";
import { conflictWords, listingWords } from "../words/listing.ts";

const titleOf = (choices: Choice[] | undefined, id: string) => choices?.find((c) => c.id === id)?.title ?? id;

function checkTitle(rubric: Rubric | undefined, id: string): string {
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
    return title;
  }
  if (head === "fact") return rubric?.facts?.find((f) => f.id === id)?.ask ?? id;
  return listingWords.labels[head] ?? path;
}

/** A stored value as a line of text. */
export function valueText(
  path: string,
  value: Json,
  known: { catalogue: Catalogue | undefined; rubric: Rubric | undefined; currency: string },
): string {
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
  return objectText(value, known.catalogue);
}

function objectText(value: { [key: string]: Json }, catalogue: Catalogue | undefined): string {
  if (typeof value.grade === "number") {
    return conflictWords.grade(value.grade, catalogue?.grades[value.grade] ?? "");
  }
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
  if (typeof value.id === "string") {
    return catalogue?.rubrics.find((r) => r.id === value.id)?.kind ?? value.id;
  }
  return Object.values(value)
    .filter((v) => v !== null)
    .map((v) => (typeof v === "object" && !Array.isArray(v) ? objectText(v, catalogue) : String(v)))
    .filter((text) => text !== "")
    .join(", ");
}
