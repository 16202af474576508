import { describe, expect, it } from "vitest";
import { blankItem, type Item, itemOf, itemValue } from "./comparable-item.ts";
import { matches } from "./find-field.tsx";

const whole: Item = {
  id: "01abc",
  kind: "two-post-lift",
  title: "Invented lift",
  maker: "Invented Works",
  price: 180_000,
  basis: "sold",
  date: "2031-02-03",
  made: 2014,
  capacity: { n: 10_000, unit: "lb" },
  hours: 1200.5,
  condition: "worn",
  complete: "bare",
  place: "Elsewhere",
  distance: { n: 40, unit: "mi" },
  seen: "an invented paper",
  note: "sold with its manual",
  off: true,
};

describe("a comparable", () => {
  it("comes back as it was kept, without its id in the value", () => {
    const value = itemValue(whole);
    expect(value).not.toHaveProperty("id");
    expect(itemOf("01abc", JSON.parse(JSON.stringify(value)))).toEqual(whole);
  });
  it("keeps title and price even when empty, as the engine asks for them", () => {
    expect(itemValue(blankItem("01abc", "press", "2031-02-03"))).toEqual({
      kind: "press",
      title: "",
      price: 0,
      basis: "asked",
      date: "2031-02-03",
    });
  });
  it("is none where its price is a text or it is no object", () => {
    expect(itemOf("x", { title: "a", price: "12", basis: "sold" })).toBeUndefined();
    expect(itemOf("x", [1])).toBeUndefined();
  });
});

describe("search", () => {
  it("wants every word, whatever the case and accents", () => {
    expect(matches("Séal kit, hydraulic", "kit seal")).toBe(true);
    expect(matches("Seal kit", "seal rope")).toBe(false);
    expect(matches("Seal kit", "  ")).toBe(true);
  });
});
