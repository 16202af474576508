/** Numbers as people type them, read strictly: what can mean two things is asked back. */
import type { Quantity } from "../generated/types.ts";
import { fieldWords as words } from "../words/parts.ts";

const lone = /^[1-9]\d{0,2}\.\d{3}$/;

/** A stored number as it stands in an input, so that it reads back as itself: 9.125 as 9.1250. */
export function numberText(n: number): string {
  const text = String(n);
  return lone.test(text) ? `${text}0` : text;
}

/** Takes the marks between thousands out of 9,000 and 9 000 and 9.000,5; a decimal comma becomes a point. */
function ungrouped(text: string): string {
  if (/^[1-9]\d{0,2}([,\s'’]\d{3})+(\.\d+)?$/.test(text)) return text.replace(/[,\s'’]/g, "");
  if (/^[1-9]\d{0,2}(\.\d{3})+,\d+$/.test(text) || /^[1-9]\d{0,2}(\.\d{3}){2,}$/.test(text)) {
    return text.replaceAll(".", "").replace(",", ".");
  }
  return text.replace(",", ".");
}

/**
 * Reads a number as typed, or says what is wrong with it. 9,000 and 9 000 are nine
 * thousand; 9.000 is asked back where nine thousand would fit too.
 */
export function readNumber(text: string, low: number, high: number, whole = false): number | string {
  const given = text.trim();
  const sign = /^[-−]/.test(given) ? -1 : 1;
  const bare = given.normalize("NFKC").replace(/^[-−]/, "").replace(/%$/, "").trim();
  if (!whole && lone.test(bare) && Number(bare.replace(".", "")) <= high) {
    const decimal = bare.endsWith("00") ? bare.slice(0, -2) : `${bare}0`;
    return words.twoWays(given, bare.replace(".", ""), decimal);
  }
  const plain = ungrouped(bare);
  if (!/^\d+(\.\d+)?$/.test(plain)) return whole ? words.notWhole(given) : words.notNumber(given);
  const n = sign * Number(plain);
  if (whole && !Number.isInteger(n)) return words.notWhole(given);
  if (n < low) return words.tooLow(given, low);
  if (n > high) return words.tooHigh(given, high);
  return n;
}

/** The unit a person wrote behind a number, by the names in use: lbs and mi. are lb and mi. */
function unitNamed(written: string, units: readonly string[]): string | undefined {
  const bare = written.replace(/\.$/, "").toLowerCase();
  return units.find((unit) => [unit.toLowerCase(), `${unit.toLowerCase()}s`].includes(bare));
}

/** Reads a number of 0 to `most` with or without a unit behind it; `unit` holds when none is written. */
export function readQuantity(
  text: string,
  unit: string,
  units: readonly string[],
  most: number,
): Quantity | string {
  const given = text.trim();
  const [, number = given, written = ""] = /^(.*?\d)\s*([^\d\s.,%][^\d]*)$/.exec(given) ?? [];
  const named = written === "" ? unit : unitNamed(written, units);
  if (named === undefined) return words.otherUnit(given, units);
  const n = readNumber(number, 0, most);
  return typeof n === "string" ? n : { n, unit: named };
}

/** Reads the year something was made: four digits, and at most next year's model. */
export function readYear(text: string, thisYear: number): number | string {
  const given = text.trim().normalize("NFKC");
  if (/^['’]?\d{2}$/.test(given)) {
    const short = Number(given.slice(-2));
    const century = Math.floor(thisYear / 100) * 100;
    return words.shortYear(given, century + short > thisYear + 1 ? century - 100 + short : century + short);
  }
  if (!/^\d{4}$/.test(given)) return words.notYear(text.trim());
  const year = Number(given);
  if (year < 1800) return words.tooLow(given, 1800);
  return year > thisYear + 1 ? words.futureYear(given, thisYear + 1) : year;
}
