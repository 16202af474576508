import { expect, test } from "vitest";
import { placed } from "./stack-bar.tsx";

test("parts stand end to end in their order, and nothing takes no place", () => {
  const parts = placed([
    { id: "price", filling: "solid", amount: 100 },
    { id: "tax", filling: "slanted", amount: 0 },
    { id: "repair", filling: "dotted", amount: 40 },
    { id: "hidden", filling: "blank", amount: 5 },
  ]);
  expect(parts.map((p) => [p.id, p.from])).toEqual([
    ["price", 0],
    ["repair", 100],
    ["hidden", 140],
  ]);
});
