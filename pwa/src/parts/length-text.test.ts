import { expect, test } from "vitest";
import { lengthTexts } from "./length-text.ts";

test.each<[number, number, string]>([
  [3.4123, 0.17, "≈ 3.4 ± 0.2 in"],
  [3.4123, 0.021, "≈ 3.41 ± 0.03 in"],
  [123.4, 23, "≈ 120 ± 30 in"],
  [0.5, 0.1, "≈ 0.5 ± 0.1 in"],
  [99.97, 0.95, "≈ 100 ± 1 in"],
])("%f give or take %f is rounded to its doubt, which is never rounded down", (n, give, said) => {
  expect(lengthTexts("en").measured({ n, give, unit: "in" })).toBe(said);
});

test("in another language", () => {
  expect(lengthTexts("es").measured({ n: 3.4123, give: 0.17, unit: "in" })).toBe("≈ 3,4 ± 0,2 in");
  expect(lengthTexts("es").scale({ n: 2.5, unit: "cm" })).toBe("2,5 cm");
});
