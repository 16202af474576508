import { useEffect, useState } from "preact/hooks";
import { computeLimit, EngineError } from "../engine/engine.ts";
import type { LimitDefinition, LimitResult, Quantity } from "../generated/types.ts";
import type { Measured } from "./use-measured.ts";

export interface LimitView {
  result?: LimitResult;
  problem?: string;
  /** The quantity at fault, where there is one. */
  field?: string;
}

const quantityText = (q: Quantity) => `${q.n} ${q.unit}`.trim();

/** What is measured, as text, over what a check takes as given. */
export function givenTexts(fixed: Record<string, string>, measured: Measured): Record<string, string> {
  const given: Record<string, string> = { ...fixed };
  for (const [name, q] of Object.entries(measured.quantities)) given[name] = quantityText(q);
  Object.assign(given, measured.words);
  if (measured.maker) given.maker = quantityText(measured.maker);
  return given;
}

/** What is given to a limit, as text; undefined while something asked is missing. */
export function givenTo(
  definition: LimitDefinition,
  fixed: Record<string, string>,
  measured: Measured,
): Record<string, string> | undefined {
  const given = givenTexts(fixed, measured);
  const has = (name: string) => given[name] !== undefined;
  const missing = definition.quantities.some((input) => {
    if (!input.either) return !input.optional && !input.default && !has(input.name);
    return !definition.quantities.some((other) => other.either === input.either && has(other.name));
  });
  return missing ? undefined : given;
}

/** The limit worked out by the engine, again at every change; the latest answer wins. */
export function useLimit(name: string, given: Record<string, string> | undefined): LimitView {
  const [view, setView] = useState<LimitView>({});
  const question = given ? JSON.stringify(given) : "";
  useEffect(() => {
    if (!given) {
      setView({});
      return;
    }
    let late = false;
    computeLimit(name, given).then(
      (result) => !late && setView({ result }),
      (cause: unknown) => {
        if (late) return;
        const said = cause instanceof Error ? cause.message : String(cause);
        const field = cause instanceof EngineError ? cause.field : undefined;
        // It stands at the field, so the field's name need not lead it.
        const problem = field && said.startsWith(`${field}: `) ? said.slice(field.length + 2) : said;
        setView({ problem, ...(field ? { field } : {}) });
      },
    );
    return () => {
      late = true;
    };
  }, [name, question]);
  return view;
}
