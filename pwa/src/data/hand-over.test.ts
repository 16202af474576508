import { expect, test } from "vitest";
import type { Locale } from "../generated/types.ts";
import { handOverOf, leaving, localeFor, pageOf, telling } from "./hand-over.ts";
import { isPath } from "./row.ts";
import type { Json } from "./value.ts";

const doc = "listing:0000000000000000000000ee01";
const after = (changes: readonly { path: string; value: unknown }[]) =>
  new Map(changes.filter((c) => c.value !== null).map((c) => [c.path, c.value as Json]));

test("everything goes in and nothing is told until it is chosen", () => {
  expect(
    handOverOf(
      new Map<string, Json>([
        ["asking", 240_000],
        ["seller", "dealer"],
      ]),
    ),
  ).toEqual({
    seller: "",
    locale: "",
    units: "",
    page: "",
    price: undefined,
    word: "",
    left: { line: [], check: [], photo: [] },
    notes: [],
  });
});

test("what is taken out is found again, and what is put back is gone", () => {
  const out = [
    ...leaving(doc, "line", ["hoses", "cables"], false),
    ...leaving(doc, "check", ["pads"], false),
    ...leaving(doc, "photo", ["b".repeat(64)], false),
    telling(doc, "pads", true),
  ];
  expect(out.every((c) => isPath(c.path))).toBe(true);
  const choice = handOverOf(after(out));
  expect(choice.left).toEqual({ line: ["cables", "hoses"], check: ["pads"], photo: ["b".repeat(64)] });
  expect(choice.notes).toEqual(["pads"]);
  expect(handOverOf(after(leaving(doc, "line", ["hoses"], true))).left.line).toEqual([]);
});

test("a price of the wrong shape is none", () => {
  for (const price of [-1, 1.5, "1900", null] as const) {
    expect(handOverOf(new Map<string, Json>([["handover/price", price]])).price).toBeUndefined();
  }
  expect(handOverOf(new Map<string, Json>([["handover/price", 190_000]])).price).toBe(190_000);
});

// Unicode CLDR 46, supplemental data, paperSize.
test.each([
  ["en-US", "letter"],
  ["es-US", "letter"],
  ["es-MX", "letter"],
  ["en-GB", "a4"],
  ["es-ES", "a4"],
  ["", "a4"],
])("paper in %s is %s", (locale, page) => {
  expect(pageOf(locale)).toBe(page);
});

test("the locale chosen, else the nearest to what is spoken, else the first", () => {
  const offered = ["en-US", "en-GB", "es-US", "es-MX"].map(
    (id) => ({ id, language: id.slice(0, 2) }) as Locale,
  );
  const of = (chosen: string, ...spoken: string[]) => localeFor(chosen, offered, spoken)?.id;
  expect(of("es-MX", "en-GB")).toBe("es-MX");
  expect(of("", "en-GB", "en")).toBe("en-GB");
  expect(of("", "de-DE", "es-CL")).toBe("es-US");
  expect(of("fr-FR", "de")).toBe("en-US");
});
