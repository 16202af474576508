/** Figures as the charts and the money screens print them; amounts are integer cents. */
import { oddsWords as words } from "../words/parts.ts";
import { locale as spoken } from "../words/tongue.ts";

/** Whole currency units without the currency, for axes: 1,250. */
export function axisMoney(cents: number, locale: string = spoken()): string {
  return new Intl.NumberFormat(locale, { maximumFractionDigits: 0 }).format(
    noNegativeZero(Math.round(cents / 100)),
  );
}

/** 0 to 1 as a whole percentage; never 0 or 100 unless it is so exactly. */
export function percent(share: number, locale: string = spoken()): string {
  return new Intl.NumberFormat(locale, { style: "percent", maximumFractionDigits: 0 }).format(honest(share));
}

/** Odds of 0 to 1 as cases of a hundred, rounded as in the engine's sentences. */
export function inHundred(odds: number): string {
  if (odds > 0 && odds < 0.005) return words.fewest;
  return String(Math.floor(100 * odds + 0.5));
}

/** Keeps a rounded share from claiming certainty. */
function honest(share: number): number {
  if (share > 0 && share < 0.01) return 0.01;
  if (share < 1 && share > 0.99) return 0.99;
  return share;
}

/** Hours with at most one decimal: 1.5. */
export function hours(h: number, locale: string = spoken()): string {
  return new Intl.NumberFormat(locale, { maximumFractionDigits: 1 }).format(h);
}

/** Two hours figures as one span, once where they read the same: 2–4. */
export function hourSpan(low: number, high: number, locale: string = spoken()): string {
  const [a, b] = [hours(low, locale), hours(high, locale)];
  return a === b ? a : `${a}–${b}`;
}

/** A factor with its sign of multiplication: × 0.90. */
export function factor(f: number, locale: string = spoken()): string {
  const figure = new Intl.NumberFormat(locale, { minimumFractionDigits: 2, maximumFractionDigits: 2 }).format(
    f,
  );
  return `× ${figure}`;
}

/** A factor as what it adds or takes: +8%, −12%; tenths where less than ten. */
export function change(f: number, locale: string = spoken()): string {
  const by = f - 1;
  const digits = Math.abs(by) < 0.0995 && Math.abs(Math.round(by * 100) - by * 100) > 0.05 ? 1 : 0;
  return new Intl.NumberFormat(locale, {
    style: "percent",
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
    signDisplay: "exceptZero",
  })
    .format(by)
    .replace("-", "−");
}

/** A count or quantity as entered: 2, 12.5. */
export function plain(n: number, locale: string = spoken()): string {
  return new Intl.NumberFormat(locale, { maximumFractionDigits: 3 }).format(n);
}

/** A moment (ISO 8601, or ms since epoch), to the minute; what is none is left as it is. */
export function moment(at: string | number, locale: string = spoken()): string {
  const when = new Date(at);
  return Number.isNaN(when.getTime())
    ? String(at)
    : when.toLocaleString(locale, { dateStyle: "medium", timeStyle: "short" });
}

/** A day, YYYY-MM-DD, in words; what is none stays as it is. */
export function day(date: string, locale: string = spoken()): string {
  const at = new Date(`${date}T12:00:00`);
  return Number.isNaN(at.getTime()) ? date : at.toLocaleDateString(locale, { dateStyle: "long" });
}

function noNegativeZero(n: number): number {
  return n === 0 ? 0 : n;
}
