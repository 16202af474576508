import { expect, test } from "vitest";
import { wordTitle } from "./limit-word.ts";

test("hyphens between words become spaces, those of figures stay", () => {
  expect(wordTitle("death-or-serious")).toBe("death or serious");
  expect(wordTitle("two-hand-trip")).toBe("two hand trip");
  expect(wordTitle("51-75")).toBe("51-75");
  expect(wordTitle("1-1/8")).toBe("1-1/8");
});
