/** What the engine's file says of worth: comparables, the new price, what was lost, adjustments left out. */
import type { AdjustChoice, Comparable, Index, Lost, NewPrice } from "../generated/types.ts";
import { rightWords } from "../words/file.ts";
import { amountOf, compact, orNone, type Reader } from "./reader.ts";
import { integerOf, isRecord, numberOf, quantityOf, rangeOf, textOf } from "./shape.ts";
import type { Json } from "./value.ts";

type Maybe = Json | undefined;

/** Year of manufacture; 0 is unknown. */
export const yearOf = (value: Maybe): number | undefined => {
  const year = integerOf(value);
  return year !== undefined && (year === 0 || (year >= 1800 && year <= 9999)) ? year : undefined;
};

/** Hours run, years of age, output: a number of 0 or more. */
export const amountedOf = (value: Maybe): number | undefined => {
  const n = numberOf(value);
  return n !== undefined && n >= 0 ? n : undefined;
};

const aboveZeroOf = (value: Maybe): number | undefined => {
  const n = amountedOf(value);
  return n === 0 ? undefined : n;
};

/** Those of the same kind of equipment. */
export function comparables(read: Reader, kind: string): Comparable[] | undefined {
  const found: Comparable[] = [];
  for (const [id, path] of read.under("item/")) {
    const item = read.get(path, (value) => (isRecord(value) ? value : undefined), rightWords.comparable);
    if (!item || item.kind !== kind) continue;
    const comparable = comparableOf(id, item, (name, right) => read.bad(`${path} ${name}`, right));
    if (comparable) found.push(comparable);
    else read.bad(path, rightWords.comparableWhole);
  }
  found.sort((a, b) => (a.id < b.id ? -1 : 1));
  return found.length > 0 ? found : undefined;
}

/** A comparable as kept; members of a wrong shape go to `bad`, and without price, basis and title it is none. */
export function comparableOf(
  id: string,
  item: { [key: string]: Json },
  bad: (name: string, right: string) => void = () => undefined,
): Comparable | undefined {
  const title = textOf(item.title);
  const price = amountOf(item.price);
  const basis = textOf(item.basis);
  if (title === undefined || price === undefined || basis === undefined) return undefined;
  const get = <T>(name: string, read: (value: Maybe) => T | undefined, right: string): T | undefined => {
    const value = item[name];
    if (value === undefined || value === null || value === "") return undefined;
    const member = read(value);
    if (member === undefined) bad(name, right);
    return member;
  };
  const text = (name: string) => get(name, textOf, rightWords.text);
  const quantity = (name: string) => get(name, quantityOf, rightWords.quantity);
  return compact<Comparable>({
    id,
    title,
    maker: text("maker"),
    price,
    basis,
    date: text("date"),
    made: get("made", yearOf, rightWords.year) || undefined,
    capacity: quantity("capacity"),
    hours: get("hours", amountedOf, rightWords.hours) || undefined,
    condition: text("condition"),
    complete: text("complete"),
    place: text("place"),
    distance: quantity("distance"),
    seen: text("seen"),
    note: text("note"),
    off: item.off === true ? true : undefined,
  });
}

export function newPriceOf(value: Maybe): NewPrice | undefined {
  if (!isRecord(value)) return undefined;
  const price = rangeOf(value.price);
  return (
    price &&
    compact<NewPrice>({
      price,
      capacity: quantityOf(value.capacity),
      seen: textOf(value.seen),
      index: indexOf(value.index),
    })
  );
}

/** Counts only once both figures are there. */
function indexOf(value: Maybe): Index | undefined {
  if (!isRecord(value)) return undefined;
  const [then, now] = [aboveZeroOf(value.then), aboveZeroOf(value.now)];
  if (then === undefined || now === undefined) return undefined;
  return compact<Index>({ series: textOf(value.series) || undefined, then, now });
}

/** A share of worth lost and why, as kept at `lost/functional` and `lost/economic`. */
interface LostShare {
  /** basis points */
  points?: number;
  why?: string;
}

/** The engine takes no larger loss, basis points. */
export const mostLost = 9_500;

function lostShareOf(value: Maybe): LostShare | undefined {
  if (!isRecord(value)) return undefined;
  const points = integerOf(value.points);
  const given = value.points !== undefined && value.points !== null;
  if (given && (points === undefined || points < 0 || points > mostLost)) return undefined;
  return compact<LostShare>({ points, why: textOf(value.why) || undefined });
}

/** Output used and rated in one unit, as kept at `lost/output`. */
interface LostOutput {
  used?: number;
  rated?: number;
}

function lostOutputOf(value: Maybe): LostOutput | undefined {
  if (!isRecord(value)) return undefined;
  const [used, rated] = [aboveZeroOf(value.used), aboveZeroOf(value.rated)];
  const bad = (member: Maybe, found: number | undefined) =>
    member !== undefined && member !== null && found === undefined;
  if (bad(value.used, used) || bad(value.rated, rated)) return undefined;
  if (used !== undefined && rated !== undefined && used > rated) return undefined;
  return compact<LostOutput>({ used, rated });
}

/** Used output counts only against a rated one. */
export function lost(read: Reader): Lost | undefined {
  const share = rightWords.lost(mostLost / 100);
  const functional = read.get("lost/functional", lostShareOf, share);
  const economic = read.get("lost/economic", lostShareOf, share);
  const output = read.get("lost/output", lostOutputOf, rightWords.output);
  const whole = output?.used !== undefined && output.rated !== undefined;
  return orNone(
    compact<Lost>({
      functional: functional?.points || undefined,
      functional_why: functional?.why,
      economic: economic?.points || undefined,
      economic_why: economic?.why,
      used: whole ? output.used : undefined,
      rated: whole ? output.rated : undefined,
    }),
  );
}

/** Adjustments of the comparables that are left out, by cause. */
export function adjust(read: Reader): Record<string, AdjustChoice> | undefined {
  const out: Record<string, AdjustChoice> = {};
  for (const [cause, path] of read.under("adjust/")) {
    const choice = read.get(path, (value) => (isRecord(value) ? value : undefined), rightWords.adjust);
    if (choice?.off === true) out[cause] = { off: true };
  }
  return orNone(out);
}
