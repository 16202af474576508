import { expect, test } from "vitest";
import { roomFor } from "./photo-copy.ts";

test("80 photos stay under 4.5 MB, and so do more; one more of few changes nothing", () => {
  for (const n of [1, 27, 28, 40, 60, 79, 80, 81, 120, 200, 350])
    expect(n * roomFor(n)).toBeLessThan(4_500_000);
  expect(roomFor(80)).toBe(55_000);
  expect(roomFor(79)).toBe(roomFor(61));
  expect(roomFor(1)).toBe(roomFor(27));
  expect(roomFor(0)).toBe(roomFor(1));
});
