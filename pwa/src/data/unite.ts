/**
 * Two records of one listing made into one: what the other one tells goes to the one that is kept, where both tell
 * different things a person decides. The other one loses nothing: it is put away and names the one it went into.
 */
import { laterStamp } from "./clock.ts";
import { listingDoc, listingId } from "./id.ts";
import { integerOf, isRecord, textOf } from "./shape.ts";
import { canonical, type Json } from "./value.ts";
import type { Change } from "./write.ts";

interface Told {
  value: Json;
  stamp: string;
}
/** What is told of a listing, by path. */
export type ToldRows = ReadonlyMap<string, Told>;

export type Side = "mine" | "theirs" | "both";

/** Something both tell, and not the same. */
export interface Difference {
  /** The path; of a finding `finding/<check>`, whose grade and measured values go together. */
  key: string;
  /** What each tells, by path. */
  mine: ReadonlyMap<string, Json>;
  theirs: ReadonlyMap<string, Json>;
  /** Whether both can be kept, one after the other. */
  joins: boolean;
  /** What is done unless somebody decides otherwise. */
  usual: Side;
}

export interface UnitePlan {
  /** The records are of two kinds of equipment: nothing can be united. */
  kinds?: readonly [mine: string, theirs: string];
  differences: Difference[];
  /** Paths that only the other one tells: they are taken over. */
  taken: Map<string, Json>;
}

/** Characters of a note that its field takes. */
const LONGEST_NOTE = 20_000;

/** Ours stay as they are, theirs stay where they are: a page given out answers to the record it was made from. */
const STAYS = /^(?:deleted$|away$|link\/)/;
const GRADED = /^(finding\/[^/]+)\/(?:answer|measured)$/;
const NOTE = /^finding\/[^/]+\/note$/;
/** Photos, what is drawn on them, and pairs of them are united one by one. */
const PICTURES = /^(?:finding\/[^/]+\/)?(?:photo|pair)\//;

export function planUnite(mine: ToldRows, theirs: ToldRows): UnitePlan {
  const plan: UnitePlan = { differences: [], taken: new Map() };
  const kinds = [kindOf(mine), kindOf(theirs)] as const;
  if (kinds[0] !== undefined && kinds[1] !== undefined && kinds[0] !== kinds[1]) {
    return { ...plan, kinds: [kinds[0], kinds[1]] };
  }
  const findings = new Map<string, string[]>();
  for (const path of [...theirs.keys()].sort()) {
    if (STAYS.test(path)) continue;
    const their = theirs.get(path) as Told;
    const own = mine.get(path);
    if (!own || own.value === "") {
      if (their.value !== "") plan.taken.set(path, their.value);
      continue;
    }
    if (their.value === "" || canonical(own.value) === canonical(their.value)) continue;
    const finding = GRADED.exec(path)?.[1];
    if (finding !== undefined) findings.set(finding, [...(findings.get(finding) ?? []), path]);
    else if (PICTURES.test(path)) {
      if (their.stamp > own.stamp) plan.taken.set(path, their.value);
    } else if (NOTE.test(path)) {
      const both = joined(own.value, their.value);
      if (both !== undefined) plan.taken.set(path, both);
      else plan.differences.push(difference(path, [path], mine, theirs));
    } else plan.differences.push(difference(path, [path], mine, theirs));
  }
  for (const [finding, paths] of findings) plan.differences.push(difference(finding, paths, mine, theirs));
  return plan;
}

function kindOf(record: ToldRows): string | undefined {
  const rubric = record.get("rubric")?.value;
  return isRecord(rubric) ? textOf(rubric.id) : undefined;
}

function difference(key: string, paths: readonly string[], mine: ToldRows, theirs: ToldRows): Difference {
  const of = (record: ToldRows) => new Map(paths.map((path) => [path, record.get(path)?.value ?? null]));
  const joins = key === "note" && joined(mine.get(key)?.value, theirs.get(key)?.value) !== undefined;
  const usual = joins ? "both" : (moreCautious(key, mine, theirs) ?? later(paths, mine, theirs));
  return { key, mine: of(mine), theirs: of(theirs), joins, usual };
}

/** The lower grade of a finding, a grade rather than none, and of a kind its newer version. */
function moreCautious(key: string, mine: ToldRows, theirs: ToldRows): Side | undefined {
  if (key.startsWith("finding/")) {
    const [own, their] = [mine, theirs].map((record) => gradeOf(record.get(`${key}/answer`)?.value));
    if (own !== their) return (own ?? 9) <= (their ?? 9) ? "mine" : "theirs";
  }
  if (key === "rubric") {
    const [own = 0, their = 0] = [mine, theirs].map((record) => versionOf(record.get(key)?.value));
    if (own !== their) return own > their ? "mine" : "theirs";
  }
  return undefined;
}

const gradeOf = (value: Json | undefined) => (isRecord(value) ? integerOf(value.grade) : undefined);
const versionOf = (value: Json | undefined) => (isRecord(value) ? integerOf(value.version) : undefined);

function later(paths: readonly string[], mine: ToldRows, theirs: ToldRows): Side {
  const newest = (record: ToldRows) =>
    paths.map((path) => record.get(path)?.stamp ?? "").reduce(laterStamp, "");
  return newest(theirs) > newest(mine) ? "theirs" : "mine";
}

/** Two notes one after the other; undefined where they are no texts, or too long together. */
function joined(own: Json | undefined, their: Json | undefined): string | undefined {
  if (typeof own !== "string" || typeof their !== "string") return undefined;
  if (own.includes(their)) return own;
  if (their.includes(own)) return their;
  const both = `${own}\n${their}`;
  return [...both].length <= LONGEST_NOTE ? both : undefined;
}

/** What to save, as one edit. `at`: now, ISO 8601 in UTC. */
export function uniteChanges(
  plan: UnitePlan,
  chosen: ReadonlyMap<string, Side>,
  docs: { mine: string; theirs: string },
  at: string,
): Change[] {
  const values = new Map(plan.taken);
  for (const one of plan.differences) {
    const side = chosen.get(one.key) ?? one.usual;
    for (const [path, their] of one.theirs) {
      const both = side === "both" ? joined(one.mine.get(path), their) : undefined;
      if (both !== undefined) values.set(path, both);
      else if (side === "theirs") values.set(path, their);
    }
  }
  const into = listingId(docs.mine) ?? "";
  return [
    ...[...values].map(([path, value]) => ({ doc: docs.mine, path, value })),
    { doc: docs.theirs, path: "away", value: { at, into } },
  ];
}

/** What a copy for a second one like it takes along: what the two have alike, nothing found and no money. */
const ALIKE =
  /^(?:rubric|title|maker|model|made|capacity|weight|length|width|height|power|voltage|phases|current|place|distance|seller|fact\/[^/]+)$/;

/** The rows of a copy under a new id; `date` is today's. */
export function copyChanges(values: ReadonlyMap<string, Json>, id: string, date: string): Change[] {
  const doc = listingDoc(id);
  const alike = [...values].filter(([path]) => ALIKE.test(path));
  return [...alike.map(([path, value]) => ({ doc, path, value })), { doc, path: "date", value: date }];
}
