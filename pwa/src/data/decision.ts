/**
 * Decisions that close a comparison. Each is one value of the document `decisions` with
 * the figures, verdicts and sentences of its day in it, so that it reads the same
 * whatever changes later. It is never written again; withdrawing marks it beside.
 */
import type { Comparison, Side, Verdict } from "../generated/types.ts";
import { newId } from "./id.ts";
import { doc } from "./read.ts";
import { integerOf, isRecord, numberOf, textOf } from "./shape.ts";
import type { Json, JsonInput } from "./value.ts";
import { type Change, edit } from "./write.ts";

const DECISIONS = "decisions";
const VERSION = 1;

/** Most characters of a reason, and of the words about a listing that must not be used. */
export const MOST_REASON = 2000;
/** Points of a verdict kept by name; of more, their number says enough. */
const MOST_POINTS = 10;

/** A side as a decision keeps it: all figures, the verdict without what every verdict says. */
export type DaySide = Omit<Side, "verdict" | "parts"> & {
  /** The listing. */
  id: string;
  /** Cents that were asked, where that is not the price of the figures. */
  asked: number | null;
  verdict: Omit<Verdict, "points" | "always"> & { points: string[]; count: number };
};

export interface Decision {
  id: string;
  /** Day it was decided, YYYY-MM-DD. */
  date: string;
  /** The listing bought; null where none was. */
  chosen: string | null;
  /** Cents paid for it. */
  price: number | null;
  reason: string;
  /** The buyer's own words about buying what must not be used. */
  acknowledged: string;
  /** ISO 8601, when it was written down. */
  made: string;
  /** The program that reckoned. */
  program: string;
  currency: string;
  criteria: { title: string; weight: number }[];
  sentences: string[];
  /** Best first. */
  sides: DaySide[];
  /** ISO 8601, when it was withdrawn; undefined: it stands. */
  withdrawn: string | undefined;
}

export type NewDecision = Pick<Decision, "date" | "chosen" | "price" | "reason" | "acknowledged" | "program">;

/** A side of a comparison as a decision keeps it. */
function daySide(id: string, side: Side, asked: number | undefined): DaySide {
  const { verdict, parts: _, ...figures } = side;
  const { points, always: __, ...said } = verdict;
  return {
    ...figures,
    id,
    asked: asked ?? null,
    verdict: { ...said, points: points.slice(0, MOST_POINTS).map((p) => p.title), count: points.length },
  };
}

/**
 * Writes a decision down, with the comparison at the price paid, and tells the listings
 * what became of them. `ids` and `asked` are in the order of the sides. No undo takes it away.
 */
export async function decide(
  label: string,
  decision: NewDecision,
  comparison: Comparison,
  listings: { id: string; asked: number | undefined }[],
  states: { id: string; state: "bought" | "let-go" }[],
): Promise<string> {
  const id = newId();
  const made = new Date().toISOString();
  const sides = comparison.order.flatMap((at) => {
    const side = comparison.sides[at];
    const listing = listings[at];
    return side && listing ? [daySide(listing.id, side, listing.asked)] : [];
  });
  const value = {
    ...decision,
    version: VERSION,
    made,
    currency: comparison.currency,
    criteria: comparison.criteria.map(({ title, weight }) => ({ title, weight })),
    sentences: comparison.sentences,
    sides,
  };
  const changes: Change[] = [
    { doc: DECISIONS, path: `item/${id}`, value: value as unknown as JsonInput },
    ...states.map(({ id: of, state }) => ({
      doc: `listing:${of}`,
      path: "state",
      value: { state, at: made },
    })),
  ];
  await edit(label, changes, { undoable: false });
  return id;
}

/** Marks a decision as withdrawn; it stays. */
export const withdraw = (label: string, id: string): Promise<void> =>
  edit(label, [{ doc: DECISIONS, path: `withdrawn/${id}`, value: new Date().toISOString() }]);

/** Every decision that this version can read, newest first, and how many it cannot. */
export async function decisions(): Promise<{ decisions: Decision[]; unread: number }> {
  const { values } = await doc(DECISIONS);
  const found: Decision[] = [];
  let unread = 0;
  for (const [path, value] of values) {
    if (!path.startsWith("item/")) continue;
    const id = path.slice("item/".length);
    const decision = decisionOf(id, value, textOf(values.get(`withdrawn/${id}`)));
    if (decision) found.push(decision);
    else unread++;
  }
  found.sort((a, b) => (a.made < b.made ? 1 : -1));
  return { decisions: found, unread };
}

/** Reads a decision of unknown origin; undefined where it is none this version can show whole. */
export function decisionOf(
  id: string,
  value: Json | undefined,
  withdrawn: string | undefined,
): Decision | undefined {
  if (!isRecord(value) || !Array.isArray(value.sides) || !Array.isArray(value.sentences)) return undefined;
  const date = textOf(value.date);
  const reason = textOf(value.reason);
  const made = textOf(value.made);
  const currency = textOf(value.currency);
  if (integerOf(value.version) !== VERSION || !date || reason === undefined || !made) return undefined;
  if (!currency || !/^[A-Z]{3}$/.test(currency)) return undefined;
  const sides = value.sides.map(sideOf);
  if (sides.length === 0 || sides.some((s) => !s)) return undefined;
  const criteria = Array.isArray(value.criteria) ? value.criteria : [];
  return {
    id,
    date,
    chosen: textOf(value.chosen) ?? null,
    price: integerOf(value.price) ?? null,
    reason,
    acknowledged: textOf(value.acknowledged) ?? "",
    made,
    program: textOf(value.program) ?? "",
    currency,
    criteria: criteria.flatMap((c) => {
      const title = isRecord(c) ? textOf(c.title) : undefined;
      const weight = isRecord(c) ? integerOf(c.weight) : undefined;
      return title !== undefined && weight !== undefined ? [{ title, weight }] : [];
    }),
    sentences: value.sentences.filter((s) => typeof s === "string"),
    sides: sides as DaySide[],
    withdrawn,
  };
}

type Shape =
  | "text"
  | "number"
  | "number?"
  | "texts"
  | "yes"
  | { [name: string]: Shape }
  | { maybe: Shape }
  | Shape[];

const point = { maybe: { price: "number", none: "yes", odds: "number" } } satisfies Shape;
const score = {
  value: "number?",
  low: "number",
  high: "number",
  coverage: "number",
  checked: "number",
  applies: "number",
} satisfies Shape;

/** What the screens read of a side; a part that is wrong makes the whole unread. */
const sideShape: { [name: string]: Shape } = {
  id: "text",
  letter: "text",
  title: "text",
  asked: "number?",
  verdict: {
    code: "text",
    title: "text",
    sentence: "text",
    hazard: "text",
    points: "texts",
    count: "number",
  },
  safety: score,
  condition: score,
  price: "number?",
  odds: "number?",
  ahead: "number?",
  ahead_low: "number?",
  ahead_high: "number?",
  all_in: {
    maybe: {
      price: "number",
      tax: "number",
      fees: "number",
      landing: "number",
      repair: "number",
      hidden: "number",
      total: "number",
    },
  },
  fair: point,
  walk_away: point,
  hours: "number",
  days: { maybe: { low: "number", likely: "number", high: "number", steps: "texts" } },
  distance: { maybe: { n: "number", unit: "text" } },
  hides: "number",
  open: "number",
  dearest: [{ title: "text", mean: "number" }],
  rubric: { id: "text", version: "number" },
  gate: "text",
  score: "number?",
};

const sideOf = (value: Json): DaySide | undefined =>
  fits(value, sideShape) ? (value as unknown as DaySide) : undefined;

function fits(value: Json | undefined, shape: Shape): boolean {
  if (shape === "yes") return typeof value === "boolean";
  if (shape === "text") return typeof value === "string";
  if (shape === "number") return numberOf(value) !== undefined;
  if (shape === "number?") return value === null || value === undefined || numberOf(value) !== undefined;
  if (shape === "texts") return Array.isArray(value) && value.every((t) => typeof t === "string");
  if (Array.isArray(shape)) return Array.isArray(value) && value.every((v) => fits(v, shape[0] as Shape));
  if ("maybe" in shape) return value === null || value === undefined || fits(value, shape.maybe as Shape);
  return isRecord(value) && Object.entries(shape).every(([name, part]) => fits(value[name], part as Shape));
}

/** What must be said plainly of a decision to buy, as ids of words. */
export type Plain = "barred" | "above" | "not-even-a-gift" | "repair" | "unproven" | "no-worth";

export function plainly(side: DaySide, price: number): Plain[] {
  const out: Plain[] = [];
  if (side.gate !== "") out.push("barred");
  if (side.verdict.code === "repair-first") out.push("repair");
  if (side.open > 0) out.push("unproven");
  if (!side.walk_away) out.push("no-worth");
  else if (side.walk_away.none) out.push("not-even-a-gift");
  else if (price > side.walk_away.price) out.push("above");
  return out;
}
