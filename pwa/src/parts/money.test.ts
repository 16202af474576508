import { describe, expect, test } from "vitest";
import { moneyText, readMoney } from "./money.ts";

describe("amounts as people type them", () => {
  const good: [string, number, string?][] = [
    ["2400", 240_000],
    ["2,400", 240_000],
    ["2.400", 240_000],
    ["2 400", 240_000],
    ["2\u202f400", 240_000],
    ["2'400", 240_000],
    ["2400,50", 240_050],
    ["2400.5", 240_050],
    ["$2,400.50", 240_050],
    ["1.234,50 €", 123_450, "EUR"],
    ["1,234,567.89", 123_456_789],
    ["USD 12", 1_200],
    ["12 kr.", 1_200, "SEK"],
    ["0", 0],
    ["0.05", 5],
    ["900 dollars", 90_000],
    ["٢٤٠٠", 240_000],
    ["1000000000", 100_000_000_000],
  ];
  test.each(good)("%s", (text, cents, currency) =>
    expect(readMoney(text, currency ?? "USD")).toEqual({ cents }),
  );

  const bad = [
    "",
    "   ",
    "abc",
    "-5",
    "−5",
    "12,34,56",
    "2,40,0",
    "1.2.3",
    "2400.",
    ".5.",
    ".5",
    "12..5",
    "0,400",
    "1,234.567,89",
    "1.234,567",
    "1e9",
    "1000000000.01",
    "NaN",
    "Infinity",
    "2,5k",
    "2500 each",
    "$ k 5",
  ];
  test.each(bad)("refuses %s", (text) => {
    const read = readMoney(text, "USD");
    expect(read.cents).toBeUndefined();
    expect(read.problem).toMatch(/\S/);
  });

  test("letters and another currency are named as such", () => {
    expect(readMoney("2,5k", "USD").problem).toMatch(/letters/);
    for (const other of ["€900", "900 €", "EUR 900", "£900"]) {
      expect(readMoney(other, "USD").problem).toMatch(/not in USD/);
    }
    expect(readMoney("€900", "EUR")).toEqual({ cents: 90_000 });
  });

  test("what is shown for changing reads back as itself", () => {
    for (const cents of [0, 5, 10, 99, 100, 101, 240_000, 240_050, 99_999_999_999]) {
      expect(readMoney(moneyText(cents), "USD")).toEqual({ cents });
    }
  });
});
