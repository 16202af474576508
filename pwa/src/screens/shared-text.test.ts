import { expect, test } from "vitest";
import { sharedText } from "./shared-text.ts";

test("what another app hands over becomes one text, each part once", () => {
  expect(sharedText({})).toBe("");
  expect(sharedText({ title: "  ", text: "" })).toBe("");
  expect(sharedText({ title: "Lift", text: "9000 lb", url: "https://example.com/1" })).toBe(
    "Lift\n9000 lb\nhttps://example.com/1",
  );
  expect(sharedText({ text: "Lift https://example.com/1", url: "https://example.com/1" })).toBe(
    "Lift https://example.com/1",
  );
  expect(sharedText({ title: "Lift", text: "Lift, 9000 lb" })).toBe("Lift, 9000 lb");
  expect(sharedText({ title: "Lift, 9000 lb", text: "Lift" })).toBe("Lift, 9000 lb");
});
