import { useEffect, useState } from "preact/hooks";
import { computeLimit, EngineError } from "../engine/engine.ts";
import type { LimitDefinition, LimitResult, Quantity } from "../generated/types.ts";

export interface LimitView {
  result?: LimitResult;
  problem?: string;
  /** The quantity at fault, where there is one. */
  field?: string;
}

const quantityText = (q: Quantity) => `${q.n} ${q.unit}`.trim();

/** What is given to a limit, as text; undefined while something asked is missing. */
export function givenTo(
  definition: LimitDefinition,
  fixed: Record<string, string>,
  quantities: Record<string, Quantity>,
  words: Record<string, string>,
  maker: Quantity | undefined,
): Record<string, string> | undefined {
  const given: Record<string, string> = { ...fixed };
  for (const [name, q] of Object.entries(quantities)) given[name] = quantityText(q);
  Object.assign(given, words);
  if (maker) given.maker = quantityText(maker);
  const missing = definition.quantities.some(
    (input) => !input.optional && !input.default && given[input.name] === undefined,
  );
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
        const problem = cause instanceof Error ? cause.message : String(cause);
        const field = cause instanceof EngineError ? cause.field : undefined;
        setView({ problem, ...(field ? { field } : {}) });
      },
    );
    return () => {
      late = true;
    };
  }, [name, question]);
  return view;
}
