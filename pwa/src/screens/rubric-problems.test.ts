import { expect, test } from "vitest";
import type { Rubric } from "../generated/types.ts";
import { placeOf } from "./rubric-problems.tsx";

const rubric = { sections: [{ checks: [{ title: "Welds" }, { title: "" }] }] } as unknown as Rubric;

test.each([
  ["sections[0].checks[0].grades.failed", "“Welds”, grades.failed"],
  ["sections[0].checks[1]", "“New point”"],
  ["sections[0].checks[7].title", "sections[0].checks[7].title"],
  ["care.bad", "care.bad"],
])("%s is %s", (field, words) => {
  expect(placeOf(field, rubric)).toBe(words);
});
