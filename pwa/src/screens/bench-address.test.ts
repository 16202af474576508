import { expect, test } from "vitest";
import { backOf, benchHref } from "./bench-address.ts";

const queryOf = (href: string) => Object.fromEntries(new URL(href, "http://localhost").searchParams);

test("values and the way back come out of an address as they went in", () => {
  const given = { nominal: "0.375 in", chain: "1-1/8", opening: "5 % of “it” & more" };
  const href = benchHref("rope-diameter", given, "/listing/a1/walk/cable");
  const { _from, ...rest } = queryOf(href);
  expect(rest).toEqual(given);
  expect(backOf(queryOf(href))).toBe("/listing/a1/walk/cable");
  expect(benchHref("thread")).toBe("/bench/thread");
});

test("a way back leads into a listing or nowhere", () => {
  for (const from of ["https://example.org/", "//example.org", "/listing/a?x=1", "javascript:alert(1)"]) {
    expect(backOf({ _from: from })).toBeUndefined();
  }
  expect(backOf({})).toBeUndefined();
});
