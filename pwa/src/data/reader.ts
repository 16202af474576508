/** Reading one document for the engine's file: what has the wrong shape is left out and named. */
import { fileWords, rightWords } from "../words/file.ts";
import { integerOf, quantityOf, rangeOf, textOf } from "./shape.ts";
import type { Json } from "./value.ts";

export type Values = ReadonlyMap<string, Json>;

/** Reads values of one document; what has the wrong shape is left out and listed. */
export class Reader {
  constructor(
    private readonly values: Values,
    private readonly problems: string[],
    private readonly where: string,
  ) {}

  get<T>(path: string, read: (value: Json | undefined) => T | undefined, right: string): T | undefined {
    const value = this.values.get(path);
    if (value === undefined || value === null) return undefined;
    const found = read(value);
    if (found === undefined) this.bad(path, right);
    return found;
  }

  text = (path: string) => this.get(path, textOf, rightWords.text);
  /** Cents. */
  money = (path: string) => this.get(path, amountOf, rightWords.money);
  quantity = (path: string) => this.get(path, quantityOf, rightWords.quantity);
  range = (path: string) => this.get(path, rangeOf, rightWords.range);

  bad(path: string, right: string): void {
    this.problems.push(fileWords.leftOut(this.where, path, right));
  }

  /** Entries below a prefix: the rest of the path and the whole path. */
  *under(prefix: string): Generator<[rest: string, path: string]> {
    for (const path of this.values.keys())
      if (path.startsWith(prefix)) yield [path.slice(prefix.length), path];
  }
}

export const amountOf = (value: Json | undefined): number | undefined => {
  const cents = integerOf(value);
  return cents !== undefined && cents >= 0 ? cents : undefined;
};

/** Members that are undefined go: the engine tells "absent" from "empty". */
export function compact<T extends object>(all: { [K in keyof T]: T[K] | undefined }): T {
  return Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined)) as T;
}

export const orNone = <T extends object>(found: T): T | undefined =>
  Object.keys(found).length > 0 ? found : undefined;
