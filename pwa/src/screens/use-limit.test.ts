import { expect, test } from "vitest";
import type { LimitDefinition } from "../generated/types.ts";
import { givenTo } from "./use-limit.ts";

const definition: LimitDefinition = {
  name: "sample",
  title: "Sample",
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
  expect(givenTo(definition, {}, { size: { n: 0.5, unit: "in" } }, {}, undefined)).toBeUndefined();
});

test("fixed, measured, words and the maker's limit go as text", () => {
  const given = givenTo(
    definition,
    { count: "3" },
    { size: { n: 9.5, unit: "mm" } },
    { fit: "b" },
    { n: 1, unit: "in" },
  );
  expect(given).toEqual({ count: "3", size: "9.5 mm", fit: "b", maker: "1 in" });
});
