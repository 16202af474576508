import { beforeEach, expect, test } from "vitest";
import type { Rubric } from "../generated/types.ts";
import { shop } from "./file.test-data.ts";
import { loadAppraisalFile } from "./file.ts";
import { doc } from "./read.ts";
import { keepRubric, keptRubric, ownChange, ownRubrics } from "./rubric.ts";
import { rubricMarkOf } from "./rubric-mark.ts";
import { newStore } from "./testing.ts";
import { edit } from "./write.ts";

const LISTING = "listing:01hzzzzzzzzzzzzzzzzzzzzzz1";

/** An invented rubric; what it says is of no matter here. */
const rubric = (id: string, version: number, about: string): Rubric =>
  ({ id, version, kind: `Kind ${id}`, about, sections: [] }) as unknown as Rubric;

beforeEach(async () => {
  await newStore();
});

/** A text of some length with letters outside of ASCII, so that pieces are cut within it. */
const long = "Übergröße ø 12 mm – 𝛑. ".repeat(4000);

test("a rubric comes back from its pieces as it was", async () => {
  const made = rubric("own-a", 1, long);
  const { mark, changes } = await keepRubric(made);
  expect(mark.pieces).toBeGreaterThan(3);
  await edit("Keep", [...changes, ownChange("own-a", mark)]);
  expect(await keptRubric(mark)).toEqual(made);
  expect((await ownRubrics()).map((o) => o.rubric)).toEqual([made]);
  // The same text again needs nothing more to be kept.
  expect((await keepRubric(made)).changes).toEqual([]);
});

test("a piece that is missing or not the one its hash names gives no rubric", async () => {
  const { mark, changes } = await keepRubric(rubric("own-b", 1, `${long} b`));
  await edit("Keep", [...changes.slice(1), ownChange("own-b", mark)]);
  const fresh = { ...mark, hash: mark.hash.replace(/^./, (c) => (c === "0" ? "1" : "0")) };
  expect(await keptRubric(fresh)).toBeUndefined();
  await edit("Forge", [{ doc: "rubrics", path: `text/${fresh.hash}/0`, value: "{}" }]);
  expect(await keptRubric({ ...fresh, pieces: 1 })).toBeUndefined();
});

test("taking it off the list keeps its text for the appraisals made with it", async () => {
  const made = rubric("own-c", 1, "c");
  const { mark, changes } = await keepRubric(made);
  await edit("Keep", [...changes, ownChange("own-c", mark)]);
  await edit("Listing", [{ doc: LISTING, path: "rubric", value: { ...mark } }]);
  await edit("Delete", [ownChange("own-c", null)]);
  expect(await ownRubrics()).toEqual([]);
  const { file } = await loadAppraisalFile(LISTING, { rubrics: [], shop });
  expect(file.made_with).toEqual(made);
  expect(file.rubric).toEqual({ id: "own-c", version: 1 });
});

test("an appraisal brings the version it was made with, and only where the engine has another", async () => {
  const first = rubric("lift", 1, "first");
  const { mark, changes } = await keepRubric(first);
  await edit("Listing", [...changes, { doc: LISTING, path: "rubric", value: { ...mark } }]);
  const with1 = await loadAppraisalFile(LISTING, { rubrics: [rubric("lift", 1, "first")], shop });
  expect(with1.file.made_with).toBeUndefined();
  const with2 = await loadAppraisalFile(LISTING, { rubrics: [rubric("lift", 2, "second")], shop });
  expect(with2.file.made_with).toEqual(first);
  // Made before texts were kept: the engine's is used, which says what changed.
  await edit("Old", [{ doc: LISTING, path: "rubric", value: { id: "lift", version: 1 } }]);
  const old = await loadAppraisalFile(LISTING, { rubrics: [rubric("lift", 2, "second")], shop });
  expect(old.file.made_with).toBeUndefined();
  expect(old.file.rubric.version).toBe(1);
});

test("a version that is not here gives way to the current one, and says so", async () => {
  const { mark, changes } = await keepRubric(rubric("own-d", 2, "d2"));
  await edit("Keep", [...changes, ownChange("own-d", mark)]);
  await edit("Listing", [
    { doc: LISTING, path: "rubric", value: { id: "own-d", version: 1, hash: "0".repeat(64), pieces: 1 } },
  ]);
  const { file, problems } = await loadAppraisalFile(LISTING, { rubrics: [], shop });
  expect(file.rubric).toEqual({ id: "own-d", version: 2 });
  expect(problems.join()).toContain("Version 1 of this rubric is not on this device");
});

test.each([
  null,
  "lift",
  { id: "lift", version: 1 },
  { id: "lift", version: 1, hash: "x", pieces: 1 },
  { id: "lift", version: 1, hash: "0".repeat(64), pieces: 0 },
  { id: "lift", version: 1, hash: "0".repeat(64), pieces: 1e6 },
])("%j names no kept text", (value) => {
  expect(rubricMarkOf(value)).toBeUndefined();
});

test("parts of the user's own reach the file, half a part does not", async () => {
  await edit("Parts", [
    { doc: LISTING, path: "title", value: "x" },
    {
      doc: "book",
      path: "own/tyre-head",
      value: { title: "Mount head", unit: "piece", price: { low: 1, likely: 2, high: 3 } },
    },
    { doc: "book", path: "own/half", value: { title: "Half", unit: "piece" } },
  ]);
  expect((await doc("book")).values.size).toBe(2);
  const { file, problems } = await loadAppraisalFile(LISTING, { rubrics: [], shop });
  expect(file.parts).toEqual([
    { id: "tyre-head", title: "Mount head", unit: "piece", price: { low: 1, likely: 2, high: 3 } },
  ]);
  expect(problems.join()).toContain("own/half");
});
