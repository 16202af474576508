import { expect, test } from "vitest";
import { readBelief } from "./own-belief.tsx";

const texts = (well: string, ordinary: string, neglected: string) => ({ well, ordinary, neglected });

test("a belief is kept in basis points", () => {
  expect(readBelief(texts("15", "60", "25"))).toEqual({ well: 1500, ordinary: 6000, neglected: 2500 });
  expect(readBelief(texts("0", "33,25 %", "66.75"))).toEqual({ well: 0, ordinary: 3325, neglected: 6675 });
});

test("shares that do not make a whole are told what they make", () => {
  expect(readBelief(texts("15", "60", "30"))).toContain("105");
  expect(readBelief(texts("15", "60", "24.5"))).toContain("99.5");
});

test("what is no share is refused by the name of its field", () => {
  for (const wrong of [texts("", "60", "40"), texts("-10", "60", "50"), texts("much", "60", "25")]) {
    expect(readBelief(wrong)).toMatch(/well kept/i);
  }
});
