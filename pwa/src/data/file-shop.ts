/** What the engine's file says of the shop's place, and of what moves equipment there. */
import type { Haulage, Site, Trailer, Truck, Vehicle } from "../generated/types.ts";
import { rightWords } from "../words/file.ts";
import { compact, orNone, type Reader } from "./reader.ts";
import { integerOf } from "./shape.ts";
import type { Json } from "./value.ts";

type Maybe = Json | undefined;

/** Phases of a supply: one or three. */
export const phasesOf = (value: Maybe): number | undefined => {
  const n = integerOf(value);
  return n === 1 || n === 3 ? n : undefined;
};

/** A share in basis points. */
const shareOf = (value: Maybe): number | undefined => {
  const n = integerOf(value);
  return n !== undefined && n > 0 && n <= 10_000 ? n : undefined;
};

const countOf = (value: Maybe): number | undefined => {
  const n = integerOf(value);
  return n !== undefined && n >= 0 ? n : undefined;
};

/** The shop's own place, as far as it was told. */
export function site(read: Reader): Site | undefined {
  const size = (name: string) => read.quantity(`site/${name}`);
  return orNone(
    compact<Site>({
      ceiling: size("ceiling"),
      door_width: size("door_width"),
      door_height: size("door_height"),
      floor_length: size("floor_length"),
      floor_width: size("floor_width"),
      floor: read.text("site/floor"),
      slab: size("slab"),
      slab_strength: size("slab_strength"),
      voltage: size("voltage"),
      phases: read.get("site/phases", phasesOf, rightWords.phases),
      current: size("current"),
      circuit: size("circuit"),
      run: size("run"),
      generator: size("generator"),
      air_flow: size("air_flow"),
      air_pressure: size("air_pressure"),
      vehicle: vehicle(read),
    }),
  );
}

function vehicle(read: Reader): Vehicle | undefined {
  const at = (name: string) => `site/vehicle/${name}`;
  return orNone(
    compact<Vehicle>({
      title: read.text(at("title")),
      weight: read.quantity(at("weight")),
      height: read.quantity(at("height")),
      front: read.get(at("front"), shareOf, rightWords.points),
    }),
  );
}

/** Truck, trailer and gear, as far as they were told. */
export function haulage(read: Reader): Haulage | undefined {
  return orNone(
    compact<Haulage>({
      truck: truck(read),
      trailer: trailer(read),
      per_distance: read.money("haul/per_distance"),
      lifting: read.quantity("haul/lifting"),
      tie_downs: tieDowns(read),
    }),
  );
}

function truck(read: Reader): Truck | undefined {
  const size = (name: string) => read.quantity(`haul/truck/${name}`);
  return orNone(
    compact<Truck>({
      rated: size("rated"),
      empty: size("empty"),
      people: size("people"),
      tow: size("tow"),
    }),
  );
}

function trailer(read: Reader): Trailer | undefined {
  const size = (name: string) => read.quantity(`haul/trailer/${name}`);
  return orNone(
    compact<Trailer>({
      rated: size("rated"),
      empty: size("empty"),
      deck: size("deck"),
      tongue: size("tongue"),
      axle: size("axle"),
    }),
  );
}

/** Paths take no blanks and slashes: "chain 3/8 grade 43" is kept under chain-3.8-grade-43. */
export const tieDownPath = (kind: string): string =>
  `haul/tie/${kind.replaceAll(" ", "-").replaceAll("/", ".")}`;

const tieDownKind = (slug: string): string => slug.replaceAll("-", " ").replaceAll(".", "/");

function tieDowns(read: Reader): Record<string, number> | undefined {
  const out: Record<string, number> = {};
  for (const [slug, path] of read.under("haul/tie/")) {
    const n = read.get(path, countOf, rightWords.count);
    if (n !== undefined) out[tieDownKind(slug)] = n;
  }
  return orNone(out);
}
