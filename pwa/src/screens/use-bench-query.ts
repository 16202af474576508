import { useEffect, useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import { parseQuantity } from "../engine/engine.ts";
import type { LimitDefinition } from "../generated/types.ts";
import { limitWords, benchWords as words } from "../words/bench.ts";
import { backOf, benchHref } from "./bench-address.ts";
import { fillBench } from "./bench-entries.ts";
import type { Measured } from "./use-measured.ts";

/**
 * Takes the values that the address brings over into the fields, once, and leaves
 * the address without them. Answers what could not be taken over.
 */
export function useBenchQuery(definition: LimitDefinition): string | undefined {
  const { query, route } = useLocation();
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const text = JSON.stringify(query);
  useEffect(() => {
    let gone = false;
    void measuredOf(definition, query).then(({ measured, problems }) => {
      if (gone || !measured) return;
      setProblem(problems.length > 0 ? problems.join(" ") : undefined);
      fillBench(definition.name, measured);
      route(benchHref(definition.name, {}, backOf(query)), true);
    });
    return () => {
      gone = true;
    };
  }, [definition, text]);
  return problem;
}

interface Read {
  /** Undefined where the address brings nothing. */
  measured?: Measured;
  problems: string[];
}

/** What an address gives, read by the engine; each part by itself. */
async function measuredOf(definition: LimitDefinition, query: Record<string, string>): Promise<Read> {
  const measured: Measured = { quantities: {}, words: {} };
  const problems: string[] = [];
  const read = async (
    name: string,
    title: string,
    dimension: string,
    keep: (q: Measured["maker"]) => void,
  ) => {
    const text = query[name];
    if (text === undefined) return;
    try {
      keep(await parseQuantity(text, dimension, ""));
    } catch (cause) {
      problems.push(words.notTaken(title, cause instanceof Error ? cause.message : String(cause)));
    }
  };
  const { quantities, maker } = definition;
  const brings = [...quantities.map((q) => q.name), ...(maker ? ["maker"] : [])];
  if (!brings.some((name) => query[name] !== undefined)) return { problems };
  for (const { name, title, dimension } of quantities) {
    const word = query[name];
    if (dimension !== "word") {
      await read(name, title, dimension, (q) => q && Object.assign(measured.quantities, { [name]: q }));
    } else if (word !== undefined) measured.words[name] = word;
  }
  if (maker) {
    await read("maker", limitWords.makerField, maker, (q) => {
      measured.maker = q;
    });
  }
  return { measured, problems };
}
