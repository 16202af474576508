import { expect, test } from "vitest";
import type { LimitDefinition } from "../generated/types.ts";
import { foundLimits } from "./bench-find.ts";

const limit = (name: string, title: string, subject: string, asks: string): LimitDefinition => ({
  name,
  title,
  subject,
  formula: "",
  source: "",
  status: "definition",
  quantities: [{ name: "a", title: asks, dimension: "number" }],
});

const catalogue = {
  limits: [
    limit("fan-guard", "Fan: openings", "guards", "height of the blades"),
    limit("rope-load", "Wire rope: working load", "ropes", "breaking force"),
    limit("rope-wires", "Wire rope: broken wires", "ropes", "strand"),
  ],
  subjects: [
    { id: "ropes", title: "Ropes", limits: ["rope-wires", "rope-load"] },
    { id: "guards", title: "Guards", limits: ["fan-guard"] },
  ],
};
const names = (search: string) =>
  foundLimits(catalogue, search).map((s) => [s.id, ...s.limits.map((l) => l.name)]);

test("without a search all stand in the order of the subjects", () => {
  expect(names(" ")).toEqual([
    ["ropes", "rope-wires", "rope-load"],
    ["guards", "fan-guard"],
  ]);
});

test("a search looks into titles, subjects and what is asked for, whatever the order of words", () => {
  expect(names("load WIRE")).toEqual([["ropes", "rope-load"]]);
  expect(names("blades")).toEqual([["guards", "fan-guard"]]);
  expect(names("guards")).toEqual([["guards", "fan-guard"]]);
  expect(names("turbine")).toEqual([]);
});
