import { expect, it } from "vitest";
import type { Json } from "../data/value.ts";
import { pathTitle, valueText } from "./value-words.ts";

const known = { catalogue: undefined, rubric: undefined, currency: "USD" };

it.each<[string, Json, string, string]>([
  ["asking", 240_000, "Asking price", "$2,400"],
  ["hours", 3400.5, "Hours run", "3400.5"],
  ["capacity", { n: 9000, unit: "lb" }, "Capacity", "9000 lb"],
  [
    "newprice",
    { price: { low: 100_000, likely: 150_000, high: 200_000 }, seen: "a list" },
    "Price of a new one",
    "$1,000 / $1,500 / $2,000, a list",
  ],
  ["lost/functional", { points: 1250, why: "one speed" }, "Worth lost by its design", "12.5%, one speed"],
  ["lost/output", { used: 12, rated: 30 }, "Worth lost by output", "asked for 12, rated 30"],
  ["adjust/maker", { off: true }, "Adjustment: maker", "left out"],
  ["adjust/maker", null, "Adjustment: maker", "removed"],
  ["landing/rigger", { off: true }, "landing/rigger", "left out"],
  ["finding/a/answer", { skipped: "no-power" }, "a: grade", "not checked: no-power"],
])("%s of a conflict reads as words", (path, value, title, text) => {
  expect(pathTitle(path, undefined)).toBe(title);
  expect(valueText(path, value, known)).toBe(text);
});
