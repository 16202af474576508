import { expect, it } from "vitest";
import { foreignCurrency } from "./foreign-currency.ts";

it.each([
  ["", "USD", undefined],
  ["USD", "USD", undefined],
  ["EUR", "USD", "EUR"],
  ["$", "USD", undefined],
  ["$", "CAD", undefined],
  ["$", "EUR", "$"],
  ["kr", "SEK", undefined],
  ["kr", "USD", "kr"],
])("a table in %j for a shop in %s", (theirs, ours, said) => {
  expect(foreignCurrency(theirs, ours)).toBe(said);
});
