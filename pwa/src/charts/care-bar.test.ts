import { expect, test } from "vitest";
import { notchesFilled } from "./care-bar.tsx";

test("notches never show certainty or nothing where there is some doubt", () => {
  expect([0, 0.001, 0.5, 0.624, 0.999, 1].map(notchesFilled)).toEqual([0, 1, 10, 12, 19, 20]);
});
