import fc from "fast-check";
import { expect, test } from "vitest";
import { shop } from "./file.test-data.ts";
import { type AppraisalDocs, appraisalFile, shopSettings } from "./file.ts";
import { tieDownPath } from "./file-shop.ts";
import type { Values } from "./reader.ts";
import type { Json } from "./value.ts";

const none: Values = new Map();
const values = (object: Record<string, Json>): Values => new Map(Object.entries(object));
const build = (docs: Partial<AppraisalDocs>) =>
  appraisalFile({ listing: none, shop: none, book: none, comparables: none, ...docs }, shop);
// biome-ignore lint/suspicious/noThenProperty: the engine's name for it; a number is no promise.
const index = { series: "an invented index", then: 101.5, now: 142 };
const hash = "ab".repeat(32);
const later = "cd".repeat(32);

test("a whole appraisal", () => {
  const listing = values({
    rubric: { id: "two-post-lift", version: 1 },
    title: "two post lift",
    made: 1998,
    capacity: { n: 9000, unit: "lb" },
    distance: { n: 42, unit: "mi" },
    asking: 240000,
    seller: "private",
    date: "2031-05-20",
    newprice: {
      price: { low: 1, likely: 2, high: 3 },
      seen: "made-up catalogue",
      index,
    },
    hours: 3400,
    effective_age: 6.5,
    "lost/functional": { points: 1250, why: "no second speed" },
    "lost/economic": { points: 500, why: "three for sale in every town" },
    "lost/output": { used: 12, rated: 30 },
    "adjust/maker": { off: true },
    "adjust/age": { off: false },
    care: { well: 1500, ordinary: 6000, neglected: 2500 },
    [`photo/${later}`]: { at: "2031-05-20T11:00:00Z", width: 4, height: 3 },
    [`photo/${hash}`]: { at: "2031-05-20T10:00:00Z", width: 4, height: 3 },
    "fact/power": "three-phase",
    "asked/why-sold": "moving away",
    "asked/plate": "",
    "finding/wr09/answer": { grade: 0 },
    "finding/wr09/measured": {
      quantities: { wires: { n: 7, unit: "" } },
      words: { where: "running" },
      maker: { n: 3, unit: "" },
    },
    "finding/wr09/note": "birdcaged",
    [`finding/wr09/photo/${hash}`]: { at: "2031-05-20T10:00:00Z", width: 4, height: 3 },
    "finding/el01/answer": { skipped: "no-power" },
    "way/rope": "hire",
    "landing/rigger": { cost: { low: 100, likely: 200, high: 300 } },
    "landing/permit": { off: true },
  });
  const comparables = values({
    "item/b": { kind: "two-post-lift", title: "another", price: 180000, basis: "sold", off: true },
    "item/a": {
      kind: "two-post-lift",
      title: "one",
      maker: "Invented Works",
      price: 150000,
      basis: "asked",
      hours: 1200.5,
      condition: "worn",
      complete: "bare",
      note: "seen once",
    },
    "item/c": { kind: "press", title: "a press", price: 90000, basis: "sold" },
  });
  const book = values({ "part/rope": { low: 100, likely: 150, high: 200 } });
  const { file, problems } = build({
    listing,
    comparables,
    book,
    shop: values({ tax: 825, "rate/own": 4000, "weight/ahead": 70 }),
  });
  expect(problems).toEqual([]);
  expect(file).toEqual({
    format: "asfound-appraisal",
    version: 1,
    rubric: { id: "two-post-lift", version: 1 },
    date: "2031-05-20",
    listing: {
      title: "two post lift",
      made: 1998,
      capacity: { n: 9000, unit: "lb" },
      hours: 3400,
      effective_age: 6.5,
      distance: { n: 42, unit: "mi" },
      asking: 240000,
      seller: "private",
      photos: [
        { hash, at: "2031-05-20T10:00:00Z" },
        { hash: later, at: "2031-05-20T11:00:00Z" },
      ],
    },
    facts: { power: "three-phase" },
    asked: { "why-sold": "moving away", plate: "" },
    findings: {
      el01: { skipped: "no-power" },
      wr09: {
        grade: 0,
        measured: { wires: { n: 7, unit: "" } },
        words: { where: "running" },
        maker: { n: 3, unit: "" },
        note: "birdcaged",
        photos: [{ hash, at: "2031-05-20T10:00:00Z" }],
      },
    },
    ways: { rope: "hire" },
    prices: { rope: { low: 100, likely: 150, high: 200 } },
    landing: { rigger: { cost: { low: 100, likely: 200, high: 300 } }, permit: { off: true } },
    comparables: [
      {
        id: "a",
        title: "one",
        maker: "Invented Works",
        price: 150000,
        basis: "asked",
        hours: 1200.5,
        condition: "worn",
        complete: "bare",
        note: "seen once",
      },
      { id: "b", title: "another", price: 180000, basis: "sold", off: true },
    ],
    adjust: { maker: { off: true } },
    new_price: {
      price: { low: 1, likely: 2, high: 3 },
      seen: "made-up catalogue",
      index,
    },
    lost: {
      functional: 1250,
      functional_why: "no second speed",
      economic: 500,
      economic_why: "three for sale in every town",
      used: 12,
      rated: 30,
    },
    care: { well: 1500, ordinary: 6000, neglected: 2500 },
    shop: { ...shop, tax: 825, rates: { own: 4000, electrician: 9500 }, weights: { ahead: 70 } },
  });
});

test("marks go with their photo, pairs with their finding, and what is nobody's any more is left quietly", () => {
  const gone = "ef".repeat(32);
  const at = "2031-05-20T10:00:00Z";
  const arrow = { id: "a", kind: "arrow", from: [0, 0], to: [0.5, 1] };
  const scale = { id: "s", kind: "scale", from: [0, 0], to: [1, 0], length: { n: 2, unit: "in" } };
  const { file, problems } = build({
    listing: values({
      [`photo/${hash}`]: { at },
      [`photo/${hash}/marks`]: { shapes: [arrow] },
      [`photo/${gone}/marks`]: { shapes: [arrow] },
      [`finding/wr09/photo/${hash}`]: { at },
      [`finding/wr09/photo/${hash}/marks`]: { shapes: [arrow, scale] },
      [`finding/wr09/photo/${later}`]: { at: "2031-05-20T11:00:00Z" },
      "finding/wr09/pair/b": { before: hash, after: gone },
      "finding/wr09/pair/a": { before: hash, after: later },
    }),
  });
  expect(problems).toEqual([]);
  expect(file.listing.photos).toEqual([{ hash, at, marks: [arrow] }]);
  expect(file.findings?.wr09).toEqual({
    photos: [
      { hash, at, marks: [arrow, scale] },
      { hash: later, at: "2031-05-20T11:00:00Z" },
    ],
    pairs: [{ before: hash, after: later }],
  });
});

test("a mark of a wrong shape is named, and the others and the photo stay", () => {
  const arrow = { id: "a", kind: "arrow", from: [0, 0], to: [0.5, 1] };
  const path = `photo/${hash}/marks`;
  const { file, problems } = build({
    listing: values({
      [`photo/${hash}`]: {},
      [path]: { shapes: [arrow, { ...arrow, id: "b", to: [2, 2] }] },
    }),
  });
  expect(file.listing.photos).toEqual([{ hash, marks: [arrow] }]);
  expect(problems).toEqual([expect.stringContaining(path)]);
  expect(problems[0]).toContain("1 left out");
});

test.each<[string, Json]>([
  ["title", 7],
  ["asking", "2,400"],
  ["asking", 2400.5],
  ["asking", -1],
  ["made", 98],
  ["capacity", { n: "ten", unit: "t" }],
  ["date", "20.5.2031"],
  ["rubric", "two-post-lift"],
  ["finding/wr09/answer", { grade: 5 }],
  ["finding/wr09/measured", { quantities: { wires: 7 } }],
  ["finding/wr09/measured", { maker: 7 }],
  ["landing/rigger", { cost: { low: 3, likely: 2, high: 1 } }],
  ["newprice", { price: 7 }],
  ["care", { well: 5000, ordinary: 4000, neglected: 2000 }],
  ["care", { well: 10000 }],
  ["photo/no-hash", { at: "" }],
  ["finding/wr09/pair/a", { before: "x" }],
  ["hours", -1],
  ["effective_age", "six"],
  ["lost/functional", { points: 9_501 }],
  ["lost/economic", { points: 12.5 }],
  ["lost/output", { used: -3, rated: 5 }],
  ["lost/output", { used: 6, rated: 5 }],
  ["adjust/age", "off"],
])("%s of a wrong shape is left out and named", (path, value) => {
  const { file, problems } = build({ listing: values({ [path]: value }) });
  expect(problems).toHaveLength(1);
  expect(problems[0]).toContain(path);
  expect(file).toEqual(build({}).file);
});

test("half an index and half an output wait for the other half", () => {
  const price = { low: 1, likely: 2, high: 3 };
  const { file, problems } = build({
    listing: values({
      newprice: { price, index: { ...index, now: 0 } },
      "lost/output": { rated: 30 },
      "lost/functional": { why: "no figure for it yet" },
    }),
  });
  expect(problems).toEqual([]);
  expect(file.new_price).toEqual({ price });
  expect(file.lost).toEqual({ functional_why: "no figure for it yet" });
});

test("a comparable keeps what reads, and what does not is named", () => {
  const comparables = values({
    "item/a": { kind: "", title: "one", price: 1, basis: "sold", hours: -4, made: 98, note: "", complete: 7 },
  });
  const { file, problems } = build({ comparables });
  expect(file.comparables).toEqual([{ id: "a", title: "one", price: 1, basis: "sold" }]);
  expect(problems).toEqual([
    "Comparables: item/a made is left out: it should be a year such as 1998.",
    "Comparables: item/a hours is left out: it should be hours of 0 or more.",
    "Comparables: item/a complete is left out: it should be a text.",
  ]);
});

test("settings of a wrong shape leave the defaults, whole", () => {
  const { shop: found, problems } = shopSettings(
    values({ odds: { opening: 8000 }, tax: -1, currency: "EUR", "weight/odds": "much" }),
    shop,
  );
  expect(found).toEqual({ ...shop, currency: "EUR" });
  expect(problems).toHaveLength(3);
});

test("whatever stands in the rows, a file comes out that JSON can carry", () => {
  const paths = [
    "title",
    "asking",
    "made",
    "capacity",
    "rubric",
    "fact/a",
    "finding/a/answer",
    "finding/a/measured",
    "finding/a",
    "landing/x",
    "newprice",
    "hours",
    "lost/functional",
    "lost/output",
    "adjust/age",
    "care",
    `photo/${hash}`,
  ];
  const anyValues = fc.dictionary(fc.constantFrom(...paths), fc.jsonValue());
  fc.assert(
    fc.property(
      anyValues,
      fc.dictionary(fc.constantFrom("tax", "odds", "rate/own", "overrun", "weight/odds"), fc.jsonValue()),
      (a, b) => {
        const { file } = build({
          listing: values(a as Record<string, Json>),
          shop: values(b as Record<string, Json>),
        });
        expect(JSON.parse(JSON.stringify(file))).toEqual(file);
      },
    ),
  );
});

test("sizes and supply of a listing", () => {
  const { file, problems } = build({
    listing: values({
      weight: { n: 1450, unit: "lb" },
      height: { n: 3.6, unit: "m" },
      power: { n: 2, unit: "hp" },
      voltage: { n: 230, unit: "V" },
      phases: 3,
      current: { n: 9, unit: "A" },
      width: "wide",
    }),
  });
  expect(file.listing).toMatchObject({
    weight: { n: 1450, unit: "lb" },
    height: { n: 3.6, unit: "m" },
    power: { n: 2, unit: "hp" },
    voltage: { n: 230, unit: "V" },
    phases: 3,
    current: { n: 9, unit: "A" },
  });
  expect(file.listing).not.toHaveProperty("width");
  expect(problems).toEqual(["width is left out: it should be a number with its unit."]);
  const two = build({ listing: values({ phases: 2 }) });
  expect(two.file.listing).not.toHaveProperty("phases");
  expect(two.problems).toEqual(["phases is left out: it should be 1 or 3."]);
});

test("the shop's place, and what moves equipment there", () => {
  const { file, problems } = build({
    shop: values({
      "site/ceiling": { n: 12, unit: "ft" },
      "site/floor": "concrete",
      "site/phases": 1,
      "site/circuit": { n: 30, unit: "A" },
      "site/vehicle/weight": { n: 5200, unit: "lb" },
      "site/vehicle/front": 5800,
      "haul/truck/tow": { n: 7000, unit: "lb" },
      "haul/trailer/deck": { n: 16, unit: "ft" },
      "haul/per_distance": 85,
      "haul/lifting": { n: 2000, unit: "kg" },
      "haul/tie/chain-3.8-grade-43": 4,
      "haul/tie/webbing-1-3.4-in": 2,
      "haul/tie/rope-1.2": -1,
      region: 12000,
    }),
  });
  expect(file.shop.site).toEqual({
    ceiling: { n: 12, unit: "ft" },
    floor: "concrete",
    phases: 1,
    circuit: { n: 30, unit: "A" },
    vehicle: { weight: { n: 5200, unit: "lb" }, front: 5800 },
  });
  expect(file.shop.haulage).toEqual({
    truck: { tow: { n: 7000, unit: "lb" } },
    trailer: { deck: { n: 16, unit: "ft" } },
    per_distance: 85,
    lifting: { n: 2000, unit: "kg" },
    tie_downs: { "chain 3/8 grade 43": 4, "webbing 1 3/4 in": 2 },
  });
  expect(file.shop.region).toBe(12000);
  expect(problems).toEqual(["Settings: haul/tie/rope-1.2 is left out: it should be a count of 0 or more."]);
  expect(build({}).file.shop).not.toHaveProperty("site");
  expect(build({}).file.shop).not.toHaveProperty("haulage");
});

test("with a region only the rates the shop set itself go along: the engine scales its own examples", () => {
  expect(build({ shop: values({ "rate/own": 4000 }) }).file.shop.rates).toEqual({ ...shop.rates, own: 4000 });
  expect(build({ shop: values({ "rate/own": 4000, region: 12000 }) }).file.shop.rates).toEqual({ own: 4000 });
  expect(shopSettings(values({ region: 12000 }), shop).shop.rates).toEqual(shop.rates);
  expect(build({ shop: values({ region: 0 }) }).file.shop).not.toHaveProperty("region");
});

test("every kind of tie-down keeps its name through its path", () => {
  for (const kind of [
    "chain 1/4 grade 30",
    "chain 5/16 unmarked",
    "webbing 1 3/4 in",
    "webbing 2 in",
    "rope 3/8",
  ]) {
    const path = tieDownPath(kind);
    expect(path).toMatch(/^[a-z0-9_.\-/]+$/);
    expect(build({ shop: values({ [path]: 3 }) }).file.shop.haulage?.tie_downs).toEqual({ [kind]: 3 });
  }
});

test("a landing cost counted on purpose is told apart from one nobody chose", () => {
  const { file } = build({ listing: values({ "landing/converter": { off: false } }) });
  expect(file.landing).toEqual({ converter: {} });
});
