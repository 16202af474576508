import { signal } from "@preact/signals";
import { useEffect, useMemo, useState } from "preact/hooks";
import { bookParts, type Carried } from "../data/file.ts";
import { watch } from "../data/read.ts";
import { type OwnRubric, ownRubrics } from "../data/rubric.ts";
import { catalogue, plainCatalogue } from "../engine/engine.ts";
import type { Catalogue, Part } from "../generated/types.ts";

/** What the engine carries, with the shop's own rubrics and parts beside it. */
export interface ShopCatalogue extends Catalogue {
  /** What the engine carries itself. */
  carried: Carried;
  own: OwnRubric[];
  ownParts: Part[];
}

/** Why there is no catalogue, in words for the screen. */
export const catalogueProblem = signal<string | undefined>(undefined);

let known: Catalogue | undefined;
let asked: Promise<Catalogue | undefined> | undefined;

/** Asks the engine once; a failed ask may be repeated. */
export function warmCatalogue(): Promise<Catalogue | undefined> {
  asked ??= catalogue().then(
    (value) => {
      known = value;
      catalogueProblem.value = undefined;
      return value;
    },
    async (cause: unknown) => {
      catalogueProblem.value = cause instanceof Error ? cause.message : String(cause);
      // The checks are known without the engine; only the judging waits for it.
      known = await plainCatalogue().catch(() => undefined);
      if (!known) asked = undefined;
      return known;
    },
  );
  return asked;
}

const own = signal<{ rubrics: OwnRubric[]; parts: Part[] } | undefined>(undefined);
let watching = false;

/** The shop's own things, live for as long as the app is open. */
function watchOwn(): void {
  if (watching) return;
  watching = true;
  watch(
    async () => ({ parts: await bookParts(), rubrics: await ownRubrics() }),
    (found) => {
      own.value = found;
    },
    () => {
      watching = false;
      own.value ??= { rubrics: [], parts: [] };
    },
  );
}

/** Rubrics, labels, limits and defaults; undefined until engine and store have answered. */
export function useCatalogue(): ShopCatalogue | undefined {
  const [value, setValue] = useState(known);
  useEffect(() => {
    watchOwn();
    let gone = false;
    if (!value) void warmCatalogue().then((v) => !gone && v && setValue(v));
    return () => {
      gone = true;
    };
  }, [value]);
  const mine = own.value;
  return useMemo(() => {
    if (!value || !mine) return undefined;
    return {
      ...value,
      rubrics: [...value.rubrics, ...mine.rubrics.map((o) => o.rubric)],
      parts: [...value.parts, ...mine.parts],
      carried: value,
      own: mine.rubrics,
      ownParts: mine.parts,
    };
  }, [value, mine]);
}
