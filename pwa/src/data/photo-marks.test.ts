import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type Figure,
  figures,
  MOST_MARKS,
  marksValue,
  measured,
  type Painter,
  type PhotoMark,
  paintMarks,
  readMarks,
} from "./photo-marks.ts";
import { canonical, cleanValue, type Json } from "./value.ts";

const scale: PhotoMark = {
  id: "s",
  kind: "scale",
  from: [0.1, 0.5],
  to: [0.5, 0.5],
  length: { n: 2, unit: "in" },
};
const arrow: PhotoMark = { id: "a", kind: "arrow", from: [0.1, 0.1], to: [0.4, 0.4], label: "worn" };
const texts = {
  scale: (q: { n: number; unit: string }) => `${q.n} ${q.unit}`,
  measured: (m: { n: number; unit: string }) => `about ${m.n.toFixed(2)} ${m.unit}`,
};
const read = (marks: unknown) => readMarks({ shapes: marks } as Json);

test("marks come back from their row as they went in", () => {
  const all = [arrow, scale];
  const kept = cleanValue("photo/x/marks", marksValue(all));
  expect(readMarks(kept)).toEqual({ marks: all, left: 0 });
  expect(marksValue([])).toBeNull();
  expect(readMarks(null)).toBeUndefined();
  expect(readMarks({ shapes: "none" })).toBeUndefined();
});

test("the fullest row there can be fits into one value", () => {
  const full = Array.from({ length: MOST_MARKS }, (_, i) => ({
    ...arrow,
    id: `${i}`.padStart(40, "0"),
    from: [0.123_456_789_012_345, 0.123_456_789_012_345] as [number, number],
    label: "\u{1F527}".repeat(60),
  }));
  expect(readMarks(cleanValue("photo/x/marks", marksValue(full)))?.marks).toEqual(full);
});

describe("what is no mark is left out and counted, and the rest stays", () => {
  test.each<[string, unknown]>([
    ["outside of the picture", { ...arrow, id: "b", to: [1.001, 0.5] }],
    ["no number", { ...arrow, id: "b", from: ["0", 0] }],
    ["three coordinates", { ...arrow, id: "b", from: [0, 0, 0] }],
    ["an unknown kind", { ...arrow, id: "b", kind: "spray" }],
    ["no id", { ...arrow, id: "" }],
    ["an id twice", arrow],
    ["61 letters", { ...arrow, id: "b", label: "x".repeat(61) }],
    ["words without words", { id: "b", kind: "text", from: [0, 0], to: [0, 0] }],
    ["a scale without length", { ...scale, length: undefined }],
    ["a scale of 0", { ...scale, length: { n: 0, unit: "in" } }],
    ["a scale in pounds", { ...scale, length: { n: 2, unit: "lb" } }],
    ["a scale that is a point", { ...scale, to: scale.from }],
    ["a text", "arrow"],
  ])("%s", (_, shape) => {
    expect(read([arrow, shape])).toEqual({ marks: [arrow], left: 1 });
  });
  test("a second scale, and a 41st mark", () => {
    expect(read([scale, { ...scale, id: "t" }])).toEqual({ marks: [scale], left: 1 });
    const many = Array.from({ length: 41 }, (_, i) => ({ ...arrow, id: `${i}` }));
    expect(read(many)).toEqual({ marks: many.slice(0, 40), left: 1 });
  });
  test("nothing breaks the reading", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const found = readMarks({ shapes: [value] } as Json);
        expect((found?.marks.length ?? 0) + (found?.left ?? 0)).toBe(1);
      }),
    );
  });
});

describe("lengths by the scale", () => {
  test("a line as long as the scale is as long as it says; half of it, half", () => {
    const line = { from: [0.1, 0.8], to: [0.5, 0.8] } as Pick<PhotoMark, "from" | "to">;
    expect(measured(line, [scale], 1200, 1600)?.n).toBeCloseTo(2, 12);
    expect(measured({ from: [0.1, 0.8], to: [0.3, 0.8] }, [scale], 1200, 1600)?.n).toBeCloseTo(1, 12);
  });
  test("shares of width and height are not the same length: 3-4-5 in points", () => {
    // The scale is 400 points of 1000; the line goes 300 across and 400 down, so 500.
    const own: PhotoMark = { ...scale, from: [0, 0], to: [0.4, 0], length: { n: 40, unit: "mm" } };
    const found = measured({ from: [0.1, 0.1], to: [0.4, 0.3] }, [own], 1000, 2000);
    expect([found?.n, found?.unit]).toEqual([50, "mm"]);
  });
  test("the doubt grows with the length and with a shorter scale, and is 0 nowhere", () => {
    const line = (to: number) => ({ from: [0, 0.2], to: [to, 0.2] }) as Pick<PhotoMark, "from" | "to">;
    const short: PhotoMark = { ...scale, to: [0.2, 0.5], length: { n: 0.5, unit: "in" } };
    const near = measured(line(0.2), [scale], 1000, 1000);
    const far = measured(line(0.9), [scale], 1000, 1000);
    const worse = measured(line(0.9), [short], 1000, 1000);
    expect(near?.give).toBeGreaterThan(0);
    expect(far?.give).toBeGreaterThan(near?.give ?? 0);
    expect(worse?.n).toBeCloseTo(far?.n ?? 0, 12);
    expect(worse?.give).toBeGreaterThan(far?.give ?? 0);
  });
  test("the doubt is what ends put down at random come to", () => {
    // Each end of both lines off by a normal error along the line, by simulation; seeded.
    let seed = 1;
    const uniform = () => {
      seed = (seed * 48_271) % 2_147_483_647;
      return seed / 2_147_483_647;
    };
    const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const off = () => 0.004 * normal();
    const found: number[] = [];
    for (let i = 0; i < 20_000; i++) {
      const known = 0.4 + off() - off();
      const own = 0.6 + off() - off();
      found.push((2 * own) / known);
    }
    const mean = found.reduce((a, b) => a + b) / found.length;
    const sd = Math.sqrt(found.reduce((a, b) => a + (b - mean) ** 2, 0) / found.length);
    const line = measured({ from: [0.1, 0.2], to: [0.7, 0.2] }, [scale], 1000, 1000);
    expect(line?.give).toBeCloseTo(sd, 2);
  });
  test("no scale, no length", () => {
    expect(measured(arrow, [arrow], 1000, 1000)).toBeUndefined();
    const hair: PhotoMark = { ...scale, from: [0, 0], to: [5e-324, 0] };
    expect(measured(arrow, [hair], 1000, 1000)).toBeUndefined();
  });
});

const points = (figure: Figure): number[] => {
  if (figure.kind === "line") return figure.points.flat();
  return figure.kind === "ellipse" ? [...figure.at, figure.rx, figure.ry] : [...figure.at, figure.size];
};

describe("figures", () => {
  test("an arrow points at its second end", () => {
    const [shaft, head] = figures({ ...arrow, label: "" }, [], 1000, 500, texts);
    expect(shaft).toEqual({
      kind: "line",
      points: [
        [100, 50],
        [400, 200],
      ],
    });
    expect(head?.kind === "line" && head.points[1]).toEqual([400, 200]);
  });
  test("a circle fills the box drawn, whichever way", () => {
    const box = { id: "c", kind: "circle", from: [0.6, 0.8], to: [0.2, 0.4] } as PhotoMark;
    expect(figures(box, [], 1000, 500, texts)).toEqual([
      { kind: "ellipse", at: [400, 300], rx: 200, ry: 100 },
    ]);
  });
  test("a measured line says its length by the scale, the scale its own", () => {
    const line: PhotoMark = { id: "m", kind: "measure", from: [0, 0.9], to: [0.4, 0.9] };
    const said = (mark: PhotoMark, all: PhotoMark[]) =>
      figures(mark, all, 1000, 1000, texts).flatMap((f) => (f.kind === "text" ? [f.text] : []));
    expect(said(scale, [scale])).toEqual(["2 in"]);
    expect(said(line, [scale, line])).toEqual(["about 2.00 in"]);
    expect(said(line, [line])).toEqual([]);
  });
  test("everything is a number, and words lie in the picture, on any picture", () => {
    const end = fc.tuple(
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
    );
    const kind = fc.constantFrom("arrow", "circle", "text", "scale", "measure");
    const side = fc.integer({ min: 1, max: 12_000 });
    const label = fc.string({ minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(kind, end, end, label, side, side, (k, from, to, words, width, height) => {
        const mark: PhotoMark = { id: "x", kind: k, from, to, label: words };
        for (const figure of figures(mark, [scale, mark], width, height, texts)) {
          expect(points(figure).every(Number.isFinite)).toBe(true);
          if (figure.kind !== "text") continue;
          expect(figure.at[0]).toBeGreaterThanOrEqual(0);
          expect(figure.at[0]).toBeLessThanOrEqual(width);
          expect([...figure.text].length * figure.size * 0.55).toBeLessThanOrEqual(width);
        }
      }),
    );
  });
});

test("painting draws every edge before any ink, and leaves the context as it was", () => {
  const calls: string[] = [];
  const state: Record<string, unknown> = {};
  const context = new Proxy(state, {
    get: (_, name: string) =>
      name in state
        ? state[name]
        : (...given: unknown[]) => calls.push(`${name} ${canonical(given as Json)}`),
    set: (_, name: string, value) => {
      state[name] = value;
      if (name === "strokeStyle") calls.push(`strokeStyle ${value}`);
      return true;
    },
  }) as unknown as Painter;
  paintMarks(context, [arrow, scale], 400, 300, texts);
  expect([calls[0], calls.at(-1)]).toEqual(["save []", "restore []"]);
  const styles = calls.filter((call) => call.startsWith("strokeStyle"));
  expect(styles).toEqual(["strokeStyle #ffffff", "strokeStyle #14202a"]);
  const inked = calls.indexOf("strokeStyle #14202a");
  expect(calls.slice(0, inked).filter((c) => c.startsWith("strokeText"))).toHaveLength(2);
  expect(calls.slice(inked).filter((c) => c.startsWith("fillText"))).toHaveLength(2);
  // The shaft of the arrow, and a line of the scale, once in light and once in ink.
  expect(calls.filter((call) => call === "lineTo [160,120]")).toHaveLength(4);
});
