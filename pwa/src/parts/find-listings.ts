/** Searching, filtering and ordering the listings; pure. */
import type { ListingSummary } from "../data/read.ts";
import { STANDS, type Stand, standOf } from "../data/stand.ts";
import { locale as spoken } from "../words/tongue.ts";

export const SORTS = ["touched", "asking", "distance", "name", "made"] as const;
type Sort = (typeof SORTS)[number];

/** What is asked of the list, as it stands in the address. Empty texts ask for nothing. */
export interface Ask {
  q: string;
  /** Id of a rubric. */
  kind: string;
  /** Folded place. */
  place: string;
  state: "" | Stand | "away";
  sort: Sort;
}

export const nothingAsked: Ask = { q: "", kind: "", place: "", state: "", sort: "touched" };

const LONGEST = 200;

/** Reads the address; what it does not know is not asked. */
export function readAsk(query: Readonly<Record<string, string>>): Ask {
  const { state = "", sort = "" } = query;
  return {
    q: (query.q ?? "").slice(0, LONGEST),
    kind: query.kind ?? "",
    place: query.place ?? "",
    state: state === "away" ? state : (STANDS.find((one) => one === state) ?? ""),
    sort: SORTS.find((one) => one === sort) ?? "touched",
  };
}

/** The address of the list with this asked. */
export function addressOf(ask: Ask): string {
  const query = new URLSearchParams();
  for (const key of ["q", "kind", "place", "state"] as const) if (ask[key] !== "") query.set(key, ask[key]);
  if (ask.sort !== "touched") query.set("sort", ask.sort);
  const text = query.toString();
  return text === "" ? "/" : `/?${text}`;
}

/** Whether some listings are left out; the order leaves none out. */
export const narrows = (ask: Ask): boolean =>
  ask.q.trim() !== "" || ask.kind !== "" || ask.place !== "" || ask.state !== "";

/** Letters that carry no accent that could be taken off. */
const ALIKE: Record<string, string> = { ß: "ss", ø: "o", ł: "l", đ: "d", æ: "ae", œ: "oe", ı: "i" };

/** Text without case, accents and double spaces. */
export const folded = (text: string): string =>
  text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[ßøłđæœı]/g, (letter) => ALIKE[letter] ?? letter)
    .replace(/\s+/g, " ")
    .trim();

/** As a plate number is read aloud: without dashes, dots and spaces. */
const bare = (text: string): string => folded(text).replace(/[\s\-./_]/g, "");

const texts = new WeakMap<ListingSummary, { kind: string; text: string }>();

function textOf(listing: ListingSummary, kind: string): string {
  const known = texts.get(listing);
  if (known?.kind === kind) return known.text;
  const { title, maker = "", model = "", serial = "", place = "", note = "" } = listing;
  const words = folded([title, maker, model, serial, place, kind, note].join("\n"));
  const text = `${words} ${bare(model)} ${bare(serial)}`;
  texts.set(listing, { kind, text });
  return text;
}

export interface Known {
  /** Title of the kind of a listing, "" where it is not known. */
  kindOf: (listing: ListingSummary) => string;
  /** Units of a distance, each in miles. */
  miles: Readonly<Record<string, number>>;
}

export interface Found {
  listings: ListingSummary[];
  /** Of those put away, how many the same question would find; 0 where it asks for them. */
  away: number;
  /** All that are not put away. */
  all: number;
  /** By rubric id, by folded place, by state, had one asked for any of that. */
  kinds: Map<string, number>;
  places: Map<string, { title: string; count: number }>;
  states: Map<Ask["state"], number>;
}

/** Answers a question; the counts tell what each further choice would leave. */
export function findListings(listings: readonly ListingSummary[], ask: Ask, known: Known): Found {
  const words = folded(ask.q).split(" ");
  const found: Found = {
    listings: [],
    away: 0,
    all: 0,
    kinds: new Map(),
    places: new Map(),
    states: new Map(),
  };
  for (const one of listings) {
    if (!one.away) found.all++;
    const text = textOf(one, known.kindOf(one));
    if (!words.every((word) => text.includes(word))) continue;
    const kind = one.rubric?.id ?? "";
    const place = folded(one.place ?? "");
    const fits = {
      kind: ask.kind === "" || ask.kind === kind,
      place: ask.place === "" || ask.place === place,
      state: inState(one, ask.state),
    };
    if (fits.place && fits.state) count(found.kinds, kind);
    if (fits.kind && fits.state && place !== "") {
      const before = found.places.get(place);
      found.places.set(place, { title: before?.title ?? one.place ?? "", count: (before?.count ?? 0) + 1 });
    }
    if (!fits.kind || !fits.place) continue;
    if (one.away) count(found.states, "away");
    else {
      count(found.states, "");
      count(found.states, standOf(one));
    }
    if (fits.state) found.listings.push(one);
    else if (one.away && (ask.state === "" || ask.state === standOf(one))) found.away++;
  }
  inOrder(found.listings, ask.sort, known);
  return found;
}

const count = <K>(counts: Map<K, number>, key: K) => counts.set(key, (counts.get(key) ?? 0) + 1);

const inState = (one: ListingSummary, state: Ask["state"]): boolean =>
  state === "away" ? one.away : !one.away && (state === "" || standOf(one) === state);

const names = new Intl.Collator(spoken(), { numeric: true, sensitivity: "base" });

/** Puts them in order; what is not told comes last, and of equals the one touched last comes first. */
function inOrder(listings: ListingSummary[], sort: Sort, known: Known): void {
  const last = (a: ListingSummary, b: ListingSummary) => b.changed - a.changed || (a.id < b.id ? -1 : 1);
  const byFigure = (figure: (one: ListingSummary) => number | undefined) => {
    const of = new Map(listings.map((one) => [one, figure(one) ?? Number.POSITIVE_INFINITY]));
    return (a: ListingSummary, b: ListingSummary) => {
      const [x, y] = [of.get(a) ?? 0, of.get(b) ?? 0];
      return x === y ? 0 : x - y;
    };
  };
  const orders: Record<Sort, () => (a: ListingSummary, b: ListingSummary) => number> = {
    touched: () => () => 0,
    asking: () => byFigure((one) => one.asking),
    distance: () =>
      byFigure(({ distance: d }) => {
        const miles = d && known.miles[d.unit];
        return d && miles !== undefined ? d.n * miles : undefined;
      }),
    made: () => byFigure((one) => (one.made === undefined ? undefined : -one.made)),
    name: () => {
      const of = new Map(listings.map((one) => [one, one.title.trim() || known.kindOf(one)]));
      return (a, b) => {
        const [x, y] = [of.get(a) ?? "", of.get(b) ?? ""];
        return Number(x === "") - Number(y === "") || names.compare(x, y);
      };
    },
  };
  const order = orders[sort]();
  listings.sort((a, b) => order(a, b) || last(a, b));
}
