import { signal } from "@preact/signals";
import { useEffect, useState } from "preact/hooks";
import { catalogue, plainCatalogue } from "../engine/engine.ts";
import type { Catalogue } from "../generated/types.ts";

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

/** Rubrics, labels, limits and defaults; undefined until the engine has answered. */
export function useCatalogue(): Catalogue | undefined {
  const [value, setValue] = useState(known);
  useEffect(() => {
    let gone = false;
    if (!value) void warmCatalogue().then((v) => !gone && v && setValue(v));
    return () => {
      gone = true;
    };
  }, [value]);
  return value;
}
