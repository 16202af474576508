import { expect, test } from "vitest";
import { answersOf, linksOf } from "./links.ts";
import type { Json } from "./value.ts";

const hash = "a".repeat(64);
const rows = (more: [string, Json][] = []): ReadonlyMap<string, Json> =>
  new Map<string, Json>([
    ["title", "Invented lift"],
    [
      "link/one",
      {
        url: "http://localhost/s/x",
        created: "2031-01-01T00:00:00Z",
        expires: "2031-02-01T00:00:00Z",
        lines: ["pads"],
        language: "en-US",
        qr: ["10", "01"],
        public: false,
      },
    ],
    [
      "link/two",
      {
        url: "http://localhost/s/y",
        created: "2031-01-02T00:00:00Z",
        expires: "2031-02-02T00:00:00Z",
        withdrawn: true,
      },
    ],
    ["link/one/opened", { first: "2031-01-02T00:00:00Z", last: "2031-01-03T00:00:00Z", count: 2 }],
    [
      "link/one/answer/pads",
      { says: "done", word: "new last year", photo: hash, at: "2031-01-03T10:00:00Z" },
    ],
    ["link/one/answer/hoses", { says: "disagree", word: "", at: "2031-01-04T10:00:00Z" }],
    ...more,
  ]);

test("links come newest first, each with how it stands and what was answered", () => {
  const [two, one] = linksOf(rows());
  expect(two).toMatchObject({ id: "two", withdrawn: true, opened: undefined, answers: [], public: true });
  expect(one).toMatchObject({
    id: "one",
    withdrawn: false,
    opened: "2031-01-03T00:00:00Z",
    qr: ["10", "01"],
    public: false,
  });
  expect(one?.answers.map((a) => a.line)).toEqual(["hoses", "pads"]);
});

test("answers come newest first and keep their link", () => {
  expect(answersOf(rows())).toEqual([
    {
      path: "link/one/answer/hoses",
      link: "one",
      line: "hoses",
      says: "disagree",
      word: "",
      photo: undefined,
      at: "2031-01-04T10:00:00Z",
    },
    {
      path: "link/one/answer/pads",
      link: "one",
      line: "pads",
      says: "done",
      word: "new last year",
      photo: hash,
      at: "2031-01-03T10:00:00Z",
    },
  ]);
});

test("what has the wrong shape is no answer and no link, or has no photo", () => {
  const odd = rows([
    ["link/three", "a text"],
    ["link/one/answer/x/deeper", { says: "done" }],
    ["link/one/answer/cable", "a text"],
    ["link/one/answer/motor", { says: "hacked", word: 5, photo: "../etc/passwd", at: 7 }],
    ["links/four", { url: "http://localhost" }],
  ]);
  expect(linksOf(odd).map((l) => l.id)).toEqual(["two", "one"]);
  expect(answersOf(odd).find((a) => a.line === "motor")).toMatchObject({
    says: "",
    word: "",
    photo: undefined,
    at: "",
  });
  expect(answersOf(odd)).toHaveLength(3);
});
