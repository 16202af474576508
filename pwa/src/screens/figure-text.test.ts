import { expect, test } from "vitest";
import { figure, figureText, grouped } from "./figure-text.ts";

test("figures keep four digits and are never written in powers of ten", () => {
  expect(figure(37699.1118, "lbf", "en")).toBe("37,700 lbf");
  expect(figure(0.0001234567, "in", "en")).toBe("0.0001235 in");
  expect(figure(2004, "", "en")).toBe("2004");
  expect(figure(-0, "", "en")).toBe("0");
  expect(figure(12.5664, "in2", "en")).toBe("12.57 in²");
  expect(figure(1.5, "min", "en")).toBe("1.5 min");
});

test("a figure says its words where it has any", () => {
  expect(figureText({ title: "tap drill", value: 6.8, unit: "mm", text: "drill 6.8 mm" })).toBe(
    "drill 6.8 mm",
  );
  expect(figureText({ title: "working area", value: 2, unit: "in2" })).toBe("2 in²");
  expect(figureText({ title: "nothing" })).toBe("");
});

test("figures of one group are read together, in their order", () => {
  const of = (title: string, group?: string) => ({ title, ...(group ? { group } : {}) });
  const groups = grouped([
    of("nearest: a", "nearest"),
    of("nearest: b", "nearest"),
    of("pitch"),
    of("repair: c", "repair"),
  ]);
  expect(groups.map((g) => [g.group, g.figures.length])).toEqual([
    ["nearest", 2],
    ["", 1],
    ["repair", 1],
  ]);
});
