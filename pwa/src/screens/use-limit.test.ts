import { expect, test } from "vitest";
import type { LimitDefinition } from "../generated/types.ts";
import { givenTo } from "./use-limit.ts";

const definition: LimitDefinition = {
  name: "sample",
  title: "Sample",
  subject: "any",
  formula: "",
  source: "",
  status: "definition",
  quantities: [
    { name: "size", title: "size", dimension: "length", unit: "in", metric: "mm" },
    { name: "count", title: "count", dimension: "number" },
    { name: "rod", title: "rod", dimension: "length", optional: true },
    { name: "fit", title: "fit", dimension: "word", words: ["a", "b"], default: "a" },
  ],
};

test("nothing is asked of the engine before every needed quantity is there", () => {
  const measured = { quantities: { size: { n: 0.5, unit: "in" } }, words: {} };
  expect(givenTo(definition, {}, measured)).toBeUndefined();
});

test("fixed, measured, words and the maker's limit go as text", () => {
  const measured = {
    quantities: { size: { n: 9.5, unit: "mm" } },
    words: { fit: "b" },
    maker: { n: 1, unit: "in" },
  };
  const given = givenTo(definition, { count: "3" }, measured);
  expect(given).toEqual({ count: "3", size: "9.5 mm", fit: "b", maker: "1 in" });
});

test("of alternatives one is enough, and none is not", () => {
  const pitched: LimitDefinition = {
    ...definition,
    quantities: [
      { name: "size", title: "size", dimension: "length", unit: "in", metric: "mm" },
      { name: "pitch", title: "pitch", dimension: "length", unit: "mm", optional: true, either: "pitch" },
      { name: "tpi", title: "turns", dimension: "threads", unit: "tpi", optional: true, either: "pitch" },
    ],
  };
  const quantities = { size: { n: 0.5, unit: "in" } };
  expect(givenTo(pitched, {}, { quantities, words: {} })).toBeUndefined();
  const more = { ...quantities, tpi: { n: 13, unit: "tpi" } };
  expect(givenTo(pitched, {}, { quantities: more, words: {} })).toEqual({ size: "0.5 in", tpi: "13 tpi" });
});
