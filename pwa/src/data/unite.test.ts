import fc from "fast-check";
import { beforeEach, expect, test } from "vitest";
import { listingDoc } from "./id.ts";
import { doc, listings, toldRows } from "./read.ts";
import { newStore } from "./testing.ts";
import { copyChanges, planUnite, type Side, type ToldRows, uniteChanges } from "./unite.ts";
import type { Json } from "./value.ts";
import { edit, undo } from "./write.ts";

const MINE = listingDoc("01hzzzzzzzzzzzzzzzzzzzzzz1");
const THEIRS = listingDoc("01hzzzzzzzzzzzzzzzzzzzzzz2");
const AT = "2026-01-05T10:00:00.000Z";
const docs = { mine: MINE, theirs: THEIRS };
const lift = { id: "two-post-lift", version: 3 };
const hash = (n: number) => String(n).repeat(64);

/** Told at the second given by `late`; the later wins where nothing is more cautious. */
const told = (values: Record<string, Json>, late: 1 | 2 = 1): ToldRows =>
  new Map(Object.entries(values).map(([path, value]) => [path, { value, stamp: `${late}` }]));

function united(mine: ToldRows, theirs: ToldRows, chosen: Record<string, Side> = {}) {
  const changes = uniteChanges(planUnite(mine, theirs), new Map(Object.entries(chosen)), docs, AT);
  expect(changes.at(-1)).toEqual({ doc: THEIRS, path: "away", value: { at: AT, into: MINE.slice(8) } });
  expect(changes.slice(0, -1).every((c) => c.doc === MINE)).toBe(true);
  const now = new Map([...mine].map(([path, { value }]) => [path, value]));
  for (const { path, value } of changes.slice(0, -1)) now.set(path, value as Json);
  return now;
}
const keys = (mine: ToldRows, theirs: ToldRows) => planUnite(mine, theirs).differences.map((d) => d.key);

test("what only one tells is kept without asking; what differs is asked, and the later one stands first", () => {
  const mine = told({ title: "Lift", asking: 100, place: "" });
  const theirs = told(
    { title: "Grey lift", asking: 100, maker: "Invented", place: "Mill Lane", serial: "" },
    2,
  );
  expect(keys(mine, theirs)).toEqual(["title"]);
  expect(Object.fromEntries(united(mine, theirs))).toEqual({
    title: "Grey lift",
    asking: 100,
    maker: "Invented",
    place: "Mill Lane",
  });
  expect(united(mine, theirs, { title: "mine" }).get("title")).toBe("Lift");
  expect(united(told({ title: "a" }, 2), told({ title: "b" }, 1)).get("title")).toBe("a");
});

test("of two grades the lower one stands first, with its measured values; both notes are kept", () => {
  const at = "finding/arms";
  const mine = told({
    [`${at}/answer`]: { grade: 1 },
    [`${at}/measured`]: { quantities: { wear: { n: 3, unit: "mm" } } },
    [`${at}/note`]: "worn",
  });
  const theirs = told(
    {
      [`${at}/answer`]: { grade: 3 },
      [`${at}/measured`]: { quantities: { wear: { n: 1, unit: "mm" } } },
      [`${at}/note`]: "looks fine",
    },
    2,
  );
  expect(keys(mine, theirs)).toEqual([at]);
  const now = united(mine, theirs);
  expect(now.get(`${at}/answer`)).toEqual({ grade: 1 });
  expect(now.get(`${at}/measured`)).toEqual(mine.get(`${at}/measured`)?.value);
  expect(now.get(`${at}/note`)).toBe("worn\nlooks fine");
  const other = united(mine, theirs, { [at]: "theirs" });
  expect(other.get(`${at}/answer`)).toEqual({ grade: 3 });
  expect(other.get(`${at}/measured`)).toEqual(theirs.get(`${at}/measured`)?.value);
});

test("a grade comes before a check that was left out, and a measured value only one has is kept", () => {
  const mine = told({ "finding/arms/answer": { skipped: "declined" }, "finding/arms/note": "later" }, 2);
  const theirs = told({
    "finding/arms/answer": { grade: 4 },
    "finding/arms/measured": { quantities: {} },
    "finding/locks/answer": { grade: 0 },
  });
  const now = united(mine, theirs);
  expect(now.get("finding/arms/answer")).toEqual({ grade: 4 });
  expect(now.get("finding/arms/measured")).toEqual({ quantities: {} });
  expect(now.get("finding/arms/note")).toBe("later");
  expect(now.get("finding/locks/answer")).toEqual({ grade: 0 });
});

test("photos of both are there; of marks on the same photo the later stand", () => {
  const mine = told({ [`photo/${hash(1)}`]: { at: AT }, [`photo/${hash(1)}/marks`]: ["old"] });
  const theirs = told(
    {
      [`photo/${hash(1)}`]: { at: AT },
      [`photo/${hash(1)}/marks`]: ["new"],
      [`photo/${hash(2)}`]: { at: AT },
      [`finding/arms/photo/${hash(3)}`]: { at: AT },
    },
    2,
  );
  expect(keys(mine, theirs)).toEqual([]);
  const now = united(mine, theirs);
  expect([...now.keys()].sort()).toEqual(
    [
      `finding/arms/photo/${hash(3)}`,
      `photo/${hash(1)}`,
      `photo/${hash(1)}/marks`,
      `photo/${hash(2)}`,
    ].sort(),
  );
  expect(now.get(`photo/${hash(1)}/marks`)).toEqual(["new"]);
});

test("your notes are joined, unless one holds the other or they are too long", () => {
  const note = (mine: string, theirs: string) =>
    united(told({ note: mine }), told({ note: theirs }, 2)).get("note");
  expect(note("a", "b")).toBe("a\nb");
  expect(note("a and b", "b")).toBe("a and b");
  expect(note("x".repeat(15_000), "y".repeat(15_000))).toBe("y".repeat(15_000));
  expect(united(told({ note: "a" }), told({ note: "b" }), { note: "mine" }).get("note")).toBe("a");
});

test("two kinds of equipment are not united; of one kind the newer version of its rubric stands first", () => {
  const plan = planUnite(told({ rubric: lift }), told({ rubric: { id: "lathe", version: 1 }, title: "x" }));
  expect(plan).toEqual({ kinds: ["two-post-lift", "lathe"], differences: [], taken: new Map() });
  const newer = { ...lift, version: 4 };
  expect(united(told({ rubric: newer }), told({ rubric: lift }, 2)).get("rubric")).toEqual(newer);
  expect(united(told({ title: "x" }), told({ rubric: lift })).get("rubric")).toEqual(lift);
});

test("links that were given out, and whether a record is deleted or put away, stay where they are", () => {
  const theirs = told({ "link/a": { url: "u" }, deleted: true, away: { at: AT }, title: "x" }, 2);
  expect(Object.fromEntries(united(told({ title: "x" }), theirs))).toEqual({ title: "x" });
});

const someValue: fc.Arbitrary<Json> = fc.constantFrom<Json>(
  "",
  "a",
  "b",
  1,
  2,
  { grade: 1 },
  { grade: 3 },
  { skipped: "declined" },
);
const somePath = fc.constantFrom(
  "title",
  "note",
  "asking",
  "fact/drive",
  "finding/arms/answer",
  "finding/arms/measured",
  "finding/arms/note",
  `photo/${hash(1)}`,
);
const record = fc
  .array(fc.tuple(somePath, someValue, fc.constantFrom("1", "2")), { maxLength: 8 })
  .map((rows): ToldRows => new Map(rows.map(([path, value, stamp]) => [path, { value, stamp }])));

test("nothing told is lost: each value of either is in the one that is kept, or a person chose the other", () => {
  fc.assert(
    fc.property(
      record,
      record,
      fc.array(fc.constantFrom<Side>("mine", "theirs", "both")),
      (mine, theirs, sides) => {
        const plan = planUnite(mine, theirs);
        const chosen = Object.fromEntries(plan.differences.map((d, i) => [d.key, sides[i] ?? d.usual]));
        const now = united(mine, theirs, chosen);
        const asked = new Set(plan.differences.flatMap((d) => [...d.theirs.keys()]));
        for (const [path, { value }] of [...mine, ...theirs]) {
          const kept = now.get(path);
          if (value === "") continue;
          if (asked.has(path)) {
            expect([
              mine.get(path)?.value,
              theirs.get(path)?.value,
              expect.stringContaining("\n"),
            ]).toContainEqual(kept);
          } else if (!path.startsWith("photo/")) {
            const same = JSON.stringify(kept) === JSON.stringify(value);
            expect(same || (typeof kept === "string" && kept.includes(String(value)))).toBe(true);
          } else expect(kept).toBeDefined();
        }
      },
    ),
  );
});

beforeEach(async () => {
  await newStore();
});

test("one undo takes all of it back", async () => {
  const set = (of: string, values: Record<string, Json>) =>
    edit(
      "Edit",
      Object.entries(values).map(([path, value]) => ({ doc: of, path, value })),
    );
  await set(MINE, { title: "Lift", rubric: lift, "finding/arms/answer": { grade: 3 } });
  await set(THEIRS, {
    title: "Grey lift",
    rubric: lift,
    maker: "Invented",
    "finding/arms/answer": { grade: 1 },
  });
  const before = await Promise.all([doc(MINE), doc(THEIRS)]);
  const plan = planUnite(await toldRows(MINE), await toldRows(THEIRS));
  await edit("Put together", uniteChanges(plan, new Map(), docs, AT));
  expect((await doc(MINE)).values.get("finding/arms/answer")).toEqual({ grade: 1 });
  expect((await listings()).find((one) => one.doc === THEIRS)).toMatchObject({
    away: true,
    into: MINE.slice(8),
  });
  expect(await undo()).toMatchObject({ label: "Put together", kept: [] });
  const after = await Promise.all([doc(MINE), doc(THEIRS)]);
  expect(after.map((one) => one.values)).toEqual(before.map((one) => one.values));
  expect((await listings()).every((one) => !one.away)).toBe(true);
});

test("a copy has what two like each other share: nothing found, no money, no serial number", async () => {
  const values = new Map<string, Json>([
    ["rubric", lift],
    ["title", "Lift"],
    ["maker", "Invented"],
    ["serial", "1"],
    ["hours", 3],
    ["asking", 100],
    ["newprice", {}],
    ["note", "mine"],
    ["fact/drive", "chain"],
    ["asked/power", "yes"],
    ["finding/arms/answer", { grade: 1 }],
    [`photo/${hash(1)}`, { at: AT }],
    ["state", { state: "bought", at: AT }],
    ["way/arms", "buy"],
  ]);
  const id = "01hzzzzzzzzzzzzzzzzzzzzzz3";
  await edit("Copy", copyChanges(values, id, "2026-01-05"));
  expect(Object.fromEntries((await doc(listingDoc(id))).values)).toEqual({
    rubric: lift,
    title: "Lift",
    maker: "Invented",
    "fact/drive": "chain",
    date: "2026-01-05",
  });
});
