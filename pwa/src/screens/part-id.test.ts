import { expect, test } from "vitest";
import { partId } from "./part-id.ts";

test.each([
  ["Mount head, nylon", "mount-head-nylon"],
  ["Größe 3/8", "gro-e-3-8"],
  ["مقبس", "part"],
  ["Seal kit", "seal-kit-3"],
  [`${"long ".repeat(20)}`, "long-long-long-long-long-long-long-long"],
])("%s is %s", (title, id) => {
  expect(partId(title, new Set(["seal-kit", "seal-kit-2"]))).toBe(id);
});
