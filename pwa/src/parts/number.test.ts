import { describe, expect, test } from "vitest";
import { numberText, readNumber, readQuantity, readYear } from "./number.ts";

describe("numbers as people type them", () => {
  test.each([
    ["9000", 9000],
    ["9,000", 9000],
    ["9 000", 9000],
    ["9\u202f000", 9000],
    ["1,234,567.5", 1_234_567.5],
    ["1.234.567", 1_234_567],
    ["9.000,5", 9000.5],
    ["9,5", 9.5],
    ["9.0", 9],
    ["9.0000", 9],
    ["0.125", 0.125],
  ])("%s", (text, n) => expect(readNumber(text, 0, 1e9)).toBe(n));

  test.each(["", "abc", "9,00,0", "1.2.3", "9,0000,000", "1e3", "--1", "9 00"])("refuses %s", (text) =>
    expect(readNumber(text, 0, 1e9)).toBeTypeOf("string"),
  );

  test("a lone point before three digits is asked back where both readings fit", () => {
    expect(readNumber("9.000", 0, 1e9)).toMatch(/write 9000 or 9\.0\b/);
    expect(readNumber("9.125", 0, 1e9)).toMatch(/write 9125 or 9\.1250/);
    // A tax of 8875 % is none.
    expect(readNumber("8.875 %", 0, 100)).toBe(8.875);
  });

  test("what is shown for changing reads back as itself", () => {
    for (const n of [0, 9, 9.1, 9.125, 1000.125, 9000]) expect(readNumber(numberText(n), 0, 1e9)).toBe(n);
  });
});

describe("quantities", () => {
  const units = ["lb", "kg"];
  test("a unit written behind the number is kept, else the one shown holds", () => {
    expect(readQuantity("9,000", "lb", units, 1e9)).toEqual({ n: 9000, unit: "lb" });
    expect(readQuantity("4000 kg", "lb", units, 1e9)).toEqual({ n: 4000, unit: "kg" });
    expect(readQuantity("9000LBS.", "kg", units, 1e9)).toEqual({ n: 9000, unit: "lb" });
    expect(readQuantity("64 km", "mi", ["mi", "km"], 20_000)).toEqual({ n: 64, unit: "km" });
  });
  test("a unit not in use and letters are named", () => {
    expect(readQuantity("600 stone", "lb", units, 1e9)).toMatch(/lb or kg/);
    expect(readQuantity("heavy", "lb", units, 1e9)).toBeTypeOf("string");
    expect(readQuantity("9.000 lb", "lb", units, 1e9)).toMatch(/9000/);
  });
});

describe("the year made", () => {
  test("four digits up to next year", () => {
    expect(readYear("2008", 2026)).toBe(2008);
    expect(readYear("2027", 2026)).toBe(2027);
    expect(readYear("2028", 2026)).toMatch(/up to 2027/);
    expect(readYear("1700", 2026)).toMatch(/1800/);
  });
  test("two digits are answered by the year they stand for", () => {
    expect(readYear("08", 2026)).toMatch(/write 2008/);
    expect(readYear("'98", 2026)).toMatch(/write 1998/);
  });
  test.each(["20o8", "2,008", "200", "20081"])("refuses %s", (text) =>
    expect(readYear(text, 2026)).toBeTypeOf("string"),
  );
});
