import { expect, test } from "vitest";
import type { Swing } from "../generated/types.ts";
import { swingBar, swingDomain } from "./tornado.ts";

const swing = (low: number, high: number): Swing => ({
  input: "repair",
  title: "Repair",
  low,
  high,
  low_at: "cheap",
  high_at: "dear",
  sentence: "",
});

test("the lower offer stands first, with the input that brings it", () => {
  expect(swingBar(swing(90_000, 150_000))).toEqual({
    from: 90_000,
    to: 150_000,
    fromAt: "cheap",
    toAt: "dear",
  });
  expect(swingBar(swing(150_000, -90_000))).toEqual({
    from: -90_000,
    to: 150_000,
    fromAt: "dear",
    toAt: "cheap",
  });
});

test("the axis holds every end and the offer, and has a breadth", () => {
  const bars = [swingBar(swing(100, 300)), swingBar(swing(250, 200))];
  expect(swingDomain(bars, 400)).toEqual([100, 400]);
  expect(swingDomain(bars, undefined)).toEqual([100, 300]);
  for (const [low, high] of [swingDomain([], undefined), swingDomain([swingBar(swing(7, 7))], 7)]) {
    expect(high).toBeGreaterThan(low ?? Number.NaN);
  }
});
