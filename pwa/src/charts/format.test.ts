import { describe, expect, it } from "vitest";
import { axisMoney, change, factor, hourSpan, inHundred, percent, plain } from "./format.ts";

describe("figures", () => {
  it("writes axis amounts in whole units", () => {
    expect(axisMoney(125_049, "en-US")).toBe("1,250");
    expect(axisMoney(-40, "en-US")).toBe("0");
    expect(axisMoney(-125_000, "en-US")).toBe("-1,250");
    expect(axisMoney(125_000_000, "de-DE")).toBe("1.250.000");
  });
  it("never rounds odds up to certainty or down to none", () => {
    expect(percent(0.9999, "en-US")).toBe("99%");
    expect(percent(1, "en-US")).toBe("100%");
  });
  it("writes cases of a hundred as the engine's sentences do", () => {
    const cases = ["0", "fewer than 1", "1", "31", "13", "100", "100"];
    expect([0, 0.0004, 0.005, 0.312, 0.125, 0.996, 1].map(inHundred)).toEqual(cases);
  });
  it("writes spans once where both ends read the same", () => {
    expect(hourSpan(2, 4, "en-US")).toBe("2–4");
    expect(hourSpan(0.5, 0.51, "en-US")).toBe("0.5");
  });
  it("writes factors as what they add or take", () => {
    const cases = ["+8%", "−12%", "+135%", "−7.6%", "0%", "+0.4%", "−10%"];
    expect([1.08, 0.8799, 2.35, 0.924, 1, 1.004, 0.9].map((f) => change(f, "en-US"))).toEqual(cases);
  });
  it("writes factors and quantities", () => {
    expect(factor(0.9, "en-US")).toBe("× 0.90");
    expect(plain(12.5, "en-US")).toBe("12.5");
  });
});
