import { describe, expect, test } from "vitest";
import { linkTroubleWords } from "../words/server.ts";
import type { Fetch } from "./http.ts";
import { createLink, LinkTrouble, linkState, makeWorkbook, withdrawLink } from "./links.ts";

const ID = "01jzzzzzzzzzzzzzzzzzzzzzz1";
const LISTING = "01hzzzzzzzzzzzzzzzzzzzzzz1";
const made = {
  id: ID,
  path: "/s/abc",
  url: "https://estimates.example/s/abc",
  expires: "2026-06-01T21:59:59.999Z",
  qr: ["10", "01"],
  public: true,
};
const state = { id: ID, state: "open", listing: LISTING, created: "a", expires: "b", answers: 2 };

const ours = (body: unknown, status = 200): Response =>
  new Response(JSON.stringify(body), {
    status,
    headers: { "content-type": "application/json", asfound: "1" },
  });
const answering =
  (response: () => Response): Fetch =>
  () =>
    Promise.resolve(response());
const offline: Fetch = () => Promise.reject(new TypeError("offline"));

const trouble = async (promise: Promise<unknown>): Promise<LinkTrouble> => {
  const cause = await promise.then(
    () => undefined,
    (cause: unknown) => cause,
  );
  if (!(cause instanceof LinkTrouble)) throw new Error(`no LinkTrouble: ${cause}`);
  return cause;
};
const create = (fetcher: Fetch) => createLink({}, new Map(), { id: ID, listing: LISTING }, fetcher);

test("a link: document and photos leave as one form, and nothing else does", async () => {
  let sent: { url: string; init: RequestInit } | undefined;
  const fetcher: Fetch = async (url, init = {}) => {
    sent = { url, init };
    return ours(made);
  };
  const photos = new Map([["a".repeat(64), new Uint8Array([1, 2, 3]).buffer]]);
  const document = { title: "t" };
  const link = await createLink(document, photos, { id: ID, listing: LISTING, lines: ["x"] }, fetcher);
  expect(link).toEqual(made);
  expect(sent?.url).toBe("/api/links");
  expect(new Headers(sent?.init.headers).get("asfound")).toBe("1");
  const form = sent?.init.body as FormData;
  expect([...form.keys()]).toEqual(["link", "photo"]);
  const head = JSON.parse(await (form.get("link") as File).text());
  expect(head).toEqual({ id: ID, listing: LISTING, lines: ["x"], document });
  const photo = form.get("photo") as File;
  expect([photo.name, photo.type, [...new Uint8Array(await photo.arrayBuffer())]]).toEqual([
    "a".repeat(64),
    "image/jpeg",
    [1, 2, 3],
  ]);
});

describe("what went wrong is said", () => {
  test("no server: the link needs one, and what works without is named", async () => {
    expect(await trouble(create(offline))).toMatchObject({
      code: "offline",
      message: expect.stringMatching(/needs the server.*PDF and printing work without/),
    });
    expect((await trouble(withdrawLink(ID, offline))).message).toContain("it still opens");
    expect((await trouble(makeWorkbook([], offline))).message).toContain("CSV");
    expect((await trouble(linkState(ID, offline))).code).toBe("offline");
  });
  test("a sign-in page of a hotel is no server of ours", async () => {
    const portal = () => new Response("<html>", { headers: { "content-type": "text/html" } });
    expect((await trouble(create(answering(portal)))).code).toBe("offline");
    expect((await trouble(makeWorkbook([], answering(portal)))).code).toBe("offline");
  });
  test.each([
    [409, "made"],
    [422, "refused"],
    [413, "refused"],
    [403, "unpaired"],
    [503, "busy"],
    [507, "fault"],
    [500, "fault"],
  ])("%i is %s", async (status, code) => {
    const said = () => ours({ code: "x", message: "title is missing" }, status);
    const cause = await trouble(create(answering(said)));
    expect(cause.code).toBe(code);
    expect(cause.message).not.toMatch(/again by itself/);
    if (code === "refused" || code === "made") expect(cause.message).toContain("title is missing");
  });
  test.each([
    ["link-made", 409, linkTroubleWords.made],
    ["links-full", 422, linkTroubleWords.full],
    ["too-many", 413, linkTroubleWords.tooLarge],
  ])("%s is told in the app's own words", async (code, status, words) => {
    const cause = await trouble(
      create(answering(() => ours({ code, message: "as the server says it" }, status))),
    );
    expect(cause.message).toBe(words);
  });
  test.each([{}, { ...made, qr: 7 }, { ...made, qr: [1] }, { ...made, url: null }])(
    "rubbish: %j",
    async (body) => {
      expect((await trouble(create(answering(() => ours(body))))).code).toBe("garbled");
    },
  );
});

test("how a link stands; one that was never made", async () => {
  const opened = { first: "a", last: "b", count: 3 };
  expect(
    await linkState(
      ID,
      answering(() => ours({ ...state, opened })),
    ),
  ).toEqual({
    ...state,
    opened,
    withdrawn: undefined,
  });
  expect(
    await linkState(
      ID,
      answering(() => ours({ ...state, opened: 7 })),
    ),
  ).toMatchObject({ opened: undefined });
  const none = () => ours({ code: "no-link", message: "none" }, 404);
  expect(await linkState(ID, answering(none))).toBeUndefined();
  expect(
    (
      await trouble(
        linkState(
          ID,
          answering(() => ours({ ...state, state: "gone" })),
        ),
      )
    ).code,
  ).toBe("garbled");
  await withdrawLink(
    ID,
    answering(() => ours({ ...state, state: "withdrawn" })),
  );
});

test("a workbook is handed on as it came", async () => {
  const type = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
  const book = () =>
    new Response(new Uint8Array([80, 75]), { headers: { "content-type": type, asfound: "1" } });
  const blob = await makeWorkbook([], answering(book));
  expect([blob.type, blob.size]).toEqual([type, 2]);
  expect(
    (
      await trouble(
        makeWorkbook(
          [],
          answering(() => ours({})),
        ),
      )
    ).code,
  ).toBe("garbled");
});
