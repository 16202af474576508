/** The typed door to the module that reads, checks and writes rubrics; it is loaded at the first question. */
import type { Part, Rubric, RubricRead, Weighed, Written } from "../generated/types.ts";
import { editorWords } from "../words/engine.ts";
import { plainCatalogue } from "./engine.ts";
import { languageOf, localeSpoken } from "./locale.ts";
import { WorkerDoor } from "./worker-door.ts";

let told: Promise<unknown> | undefined;

const door = new WorkerDoor(() => {
  told = undefined;
  return new Worker(new URL("./editor-worker.ts", import.meta.url), { type: "module" });
}, editorWords);

/** The editor is told once how to speak; in English it needs no telling. */
async function ask<T>(call: string, argument: unknown): Promise<T> {
  const locale = localeSpoken();
  if (languageOf(locale) !== "en" && !told) {
    const { words } = await plainCatalogue();
    told = door.ask("speak", { locale, words });
    await told;
  }
  return door.ask<T>(call, argument);
}

/** What a rubric is read against. */
export interface Against {
  /** How messages call it. */
  name: string;
  /** The price book it may refer to. */
  parts: Part[];
  /** Ids it must not have. */
  taken: string[];
}

/** A rubric file, read and held to the rules of rubric files. */
export const readRubric = (text: string, against: Against): Promise<RubricRead> =>
  ask("read", { ...against, text });

/** A rubric being edited, held to the same rules. */
export const checkRubric = (rubric: Rubric, against: Against): Promise<RubricRead> =>
  ask("read", { ...against, rubric });

/** The rubric as a file. */
export const writeRubric = async (rubric: Rubric): Promise<string> =>
  (await ask<Written>("write", { rubric })).text;

/** Weights out of answers two by two: row i, column j is how many times i matters more than j. */
export const weigh = (answers: number[][]): Promise<Weighed> => ask("weigh", { answers });
