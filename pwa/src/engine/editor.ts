/** The typed door to the module that reads, checks and writes rubrics; it is loaded at the first question. */
import type { Part, Rubric, RubricRead, Weighed, Written } from "../generated/types.ts";
import { WorkerDoor } from "./worker-door.ts";

const door = new WorkerDoor(
  () => new Worker(new URL("./editor-worker.ts", import.meta.url), { type: "module" }),
  "The rubric editor stopped. What you entered is kept; go on, and it starts again.",
);

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
  door.ask("read", { ...against, text });

/** A rubric being edited, held to the same rules. */
export const checkRubric = (rubric: Rubric, against: Against): Promise<RubricRead> =>
  door.ask("read", { ...against, rubric });

/** The rubric as a file. */
export const writeRubric = async (rubric: Rubric): Promise<string> =>
  (await door.ask<Written>("write", { rubric })).text;

/** Weights out of answers two by two: row i, column j is how many times i matters more than j. */
export const weigh = (answers: number[][]): Promise<Weighed> => door.ask("weigh", { answers });
