/** Money is integer cents everywhere; only here does it meet text. */
import { moneyWords as words } from "../words/parts.ts";
import { locale as spoken } from "../words/tongue.ts";

/** The largest amount the engine takes: one billion currency units. */
const most = 100_000_000_000;

const formats = new Map<string, Intl.NumberFormat>();

function format(currency: string, decimals: number): Intl.NumberFormat {
  const key = `${currency}/${decimals}`;
  let known = formats.get(key);
  if (!known) {
    known = new Intl.NumberFormat(spoken(), {
      style: "currency",
      currency,
      currencyDisplay: "narrowSymbol",
      minimumFractionDigits: decimals,
      maximumFractionDigits: decimals,
    });
    formats.set(key, known);
  }
  return known;
}

/** An amount for reading: cents are shown only where there are any. */
export function showMoney(cents: number, currency: string): string {
  return format(currency, cents % 100 === 0 ? 0 : 2).format(cents / 100);
}

/** An amount as it stands in an input: no symbol, no grouping, so it is easy to change. */
export function moneyText(cents: number): string {
  const whole = Math.trunc(cents / 100);
  const rest = Math.abs(cents % 100);
  return rest === 0 ? String(whole) : `${whole}.${String(rest).padStart(2, "0")}`;
}

/** Digits of other scripts and full-width forms become plain digits. */
function plainDigits(text: string): string {
  return text
    .normalize("NFKC")
    .replace(/[\u0660-\u0669]/g, (d) => String(d.charCodeAt(0) - 0x660))
    .replace(/[\u06f0-\u06f9]/g, (d) => String(d.charCodeAt(0) - 0x6f0));
}

export type MoneyRead = { cents: number; problem?: undefined } | { cents?: undefined; problem: string };

const signs = new Map<string, Set<string>>();

/** What may stand beside an amount in this currency: its code, its signs, its name. */
function signsOf(currency: string): Set<string> {
  const known = signs.get(currency) ?? new Set([currency.toLowerCase()]);
  if (currency !== "" && !signs.has(currency)) {
    for (const currencyDisplay of ["symbol", "narrowSymbol", "name"] as const) {
      for (const locale of [spoken(), "en"]) {
        const parts = new Intl.NumberFormat(locale, { style: "currency", currency, currencyDisplay });
        const sign =
          parts
            .formatToParts(2)
            .find((p) => p.type === "currency")
            ?.value.toLowerCase() ?? "";
        known.add(sign.split(/\s/).at(-1) ?? sign);
      }
    }
    signs.set(currency, known);
  }
  return known;
}

/** What is wrong with the words or signs around an amount, if anything. */
function signProblem(given: string, marks: string[], currency: string): string | undefined {
  const foreign = marks
    .map((m) => m.trim().replace(/\.$/, ""))
    .find((m) => m !== "" && !signsOf(currency).has(m.toLowerCase()));
  if (foreign === undefined) return undefined;
  const another = currency !== "" && /\p{Sc}|^[A-Z]{3}$/u.test(foreign);
  return another ? words.foreign(given, currency) : words.letters(given);
}

/**
 * Reads an amount as a person types it: 2400, 2,400, 2 400, 2400,50, $2,400.50, 1.234,50.
 * Beside it may stand the sign, code or name of the currency, and nothing else.
 * Money has at most two decimals, so a mark before exactly three digits groups thousands.
 */
export function readMoney(text: string, currency: string): MoneyRead {
  const given = text.trim();
  const beside: string[] = [];
  const aside = (mark: string) => {
    beside.push(mark);
    return "";
  };
  const bare = plainDigits(given)
    .replace(/^[\p{Sc}\p{L}][\p{Sc}\p{L}.\s]*(?=[\d−–-])/u, aside)
    .replace(/\s*[\p{Sc}\p{L}][\p{Sc}\p{L}.\s]*$/u, aside)
    .replace(/['’](?=\d{3})/g, "")
    .replace(/\s(?=\d{3}(\D|$))/g, "");
  if (bare === "") return { problem: words.empty };
  if (/^[-−–]/.test(bare)) return { problem: words.negative(given) };
  if (!/^\d[\d.,]*$/.test(bare) || /[.,]$/.test(bare)) return { problem: words.unreadable(given) };
  const sign = signProblem(given, beside, currency);
  if (sign !== undefined) return { problem: sign };
  const mark = Math.max(bare.lastIndexOf("."), bare.lastIndexOf(","));
  const decimals = mark < 0 ? 0 : bare.length - mark - 1;
  const hasDecimals = decimals === 1 || decimals === 2;
  const whole = hasDecimals ? bare.slice(0, mark) : bare;
  const fraction = hasDecimals ? bare.slice(mark + 1).padEnd(2, "0") : "00";
  const marks = new Set(whole.replace(/\d/g, ""));
  if (hasDecimals) marks.add(bare.charAt(mark));
  const used = whole.replace(/\d/g, "").length;
  const grouped = /^[1-9]\d{0,2}([.,]\d{3})+$/.test(whole);
  const sameMark = new Set(whole.replace(/\d/g, "")).size <= 1;
  if (used > 0 && (!grouped || !sameMark || (hasDecimals && marks.size < 2))) {
    return { problem: words.unreadable(given) };
  }
  const cents = Number(whole.replace(/\D/g, "") + fraction);
  if (cents > most) return { problem: words.tooLarge(given) };
  return { cents };
}
