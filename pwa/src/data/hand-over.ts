/** What the buyer chose for the paper that the seller gets; kept with the listing under `handover/`. */
import type { Locale } from "../generated/types.ts";
import type { Values } from "./reader.ts";
import { integerOf, textOf } from "./shape.ts";
import type { Change } from "./write.ts";

/** Characters that fit. */
export const MOST_NAME = 120;
export const MOST_CONTACT = 200;
export const MOST_WORD = 1_000;

/** What can be taken out of the paper, by its id; a photo by its hash. */
export type Left = "line" | "check" | "photo";

export interface HandOver {
  /** The seller's name; stays on the device until a paper names it. */
  seller: string;
  /** BCP 47; "" where none was chosen. */
  locale: string;
  /** inch or metric; "" where none was chosen. */
  units: string;
  /** letter or a4; "" where none was chosen. */
  page: string;
  /** The price the buyer states, cents; none unless he entered one here. */
  price: number | undefined;
  word: string;
  left: Record<Left, string[]>;
  /** Checks whose note goes in. */
  notes: string[];
}

export const handOverPath = (name: "seller" | "locale" | "units" | "page" | "price" | "word"): string =>
  `handover/${name}`;

export function handOverOf(values: Values): HandOver {
  const text = (name: Parameters<typeof handOverPath>[0]) => textOf(values.get(handOverPath(name))) ?? "";
  const price = integerOf(values.get(handOverPath("price")));
  return {
    seller: text("seller"),
    locale: text("locale"),
    units: text("units"),
    page: text("page"),
    price: price !== undefined && price >= 0 ? price : undefined,
    word: text("word"),
    left: {
      line: marked(values, "line", false),
      check: marked(values, "check", false),
      photo: marked(values, "photo", false),
    },
    notes: marked(values, "note", true),
  };
}

function marked(values: Values, what: Left | "note", as: boolean): string[] {
  const prefix = `handover/${what}/`;
  const ids: string[] = [];
  for (const [path, value] of values) {
    if (path.startsWith(prefix) && value === as) ids.push(path.slice(prefix.length));
  }
  return ids.sort();
}

/** Takes pieces out of the paper, or puts them back. */
export const leaving = (doc: string, what: Left, ids: readonly string[], goesIn: boolean): Change[] =>
  ids.map((id) => ({ doc, path: `handover/${what}/${id}`, value: goesIn ? null : false }));

/** Lets the seller read the note of a check, or not. */
export const telling = (doc: string, check: string, goesIn: boolean): Change => ({
  doc,
  path: `handover/note/${check}`,
  value: goesIn ? true : null,
});

/** Where letter paper is used (Unicode CLDR, supplemental data, paperSize US-Letter). */
const LETTER = new Set("BZ CA CL CO CR GT MX NI PA PH PR SV US VE".split(" "));

/** The paper that is in printers where a locale is spoken. */
export const pageOf = (locale: string): "letter" | "a4" =>
  LETTER.has(locale.split("-").at(-1) ?? "") ? "letter" : "a4";

/** The locale offered that was chosen, else the nearest to what this device speaks. */
export function localeFor(
  chosen: string,
  offered: readonly Locale[],
  spoken: readonly string[],
): Locale | undefined {
  const own = offered.find((l) => l.id === chosen);
  if (own) return own;
  for (const tag of spoken) {
    const near = offered.find((l) => l.id === tag) ?? offered.find((l) => l.language === tag.split("-")[0]);
    if (near) return near;
  }
  return offered[0];
}
