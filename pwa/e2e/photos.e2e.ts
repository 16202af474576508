/** Photos that prove: drawn on with a finger and no signal, side by side, and never passed off for another. */
import { createHash } from "node:crypto";
import { type BrowserContext, type CDPSession, expect, type Page, test } from "@playwright/test";
import { Gate } from "./gate.ts";
import { badge, checkNow, openCheck, picture, visitOnce } from "./person.ts";
import { table, valueAt } from "./replica.ts";
import { listingId, seed } from "./seed.ts";
import { Server } from "./server.ts";

let server: Server;
let gate: Gate;
let context: BrowserContext;
let page: Page;

const id = listingId(1);
const doc = `listing:${id}`;
let listing: string;

test.beforeEach(async ({ browser }) => {
  server = await Server.start();
  gate = await Gate.open(() => server.port);
  listing = `${gate.url}/listing/${id}`;
  await seed(server.url, [{ id, file: "2-lift-half", listing: { title: "Half-walked lift (invented)" } }]);
  context = await browser.newContext();
  page = await context.newPage();
  await visitOnce(page, gate.url);
  await expect(page.locator(".tag-title")).toHaveCount(1, { timeout: 30_000 });
  await openCheck(page, listing, "hoses");
});
test.afterEach(async () => {
  await context.close();
  await gate.close();
  await server.remove();
});

async function addPhoto(words: string): Promise<void> {
  const before = (await table(page, "photos")).length;
  await page
    .locator('input[type="file"]')
    .first()
    .setInputFiles({ name: `${words}.jpg`, mimeType: "image/jpeg", buffer: await picture(page, words) });
  await expect.poll(async () => (await table(page, "photos")).length).toBe(before + 1);
  await page.locator(".photo-grid").first().scrollIntoViewIfNeeded();
  await expect(page.locator("img.photo-thumb")).toHaveCount(before + 1);
}

/** SHA-256 of each picture kept in the browser, by the name it is kept under. */
async function prints(of: Page): Promise<[name: string, hash: string][]> {
  const images = await of.evaluate(
    () =>
      new Promise<[string, number[]][]>((done, fail) => {
        const opening = indexedDB.open("asfound");
        opening.onsuccess = () => {
          const all = opening.result.transaction("images").objectStore("images").getAll();
          all.onerror = () => fail(all.error);
          all.onsuccess = () => {
            opening.result.close();
            done(all.result.map(({ hash, data }) => [hash, [...new Uint8Array(data as ArrayBuffer)]]));
          };
        };
      }),
  );
  return images.map(([name, bytes]) => [name, createHash("sha256").update(Buffer.from(bytes)).digest("hex")]);
}

type Share = [x: number, y: number];

/** A finger put down, drawn and lifted, as shares of the picture. */
async function draw(finger: CDPSession, from: Share, to: Share): Promise<void> {
  await page.locator(".photo-view").evaluate((view) => view.scrollTo(0, 0));
  const box = await page.locator(".photo-sheet").boundingBox();
  if (!box) throw new Error("there is no picture");
  const at = (share: number) => ({
    x: box.x + box.width * (from[0] + (to[0] - from[0]) * share),
    y: box.y + box.height * (from[1] + (to[1] - from[1]) * share),
  });
  await finger.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [at(0)] });
  for (const share of [0.25, 0.5, 0.75, 1]) {
    await finger.send("Input.dispatchTouchEvent", { type: "touchMove", touchPoints: [at(share)] });
  }
  await finger.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
}

const tool = (name: string) => page.getByRole("button", { name, exact: true }).click();
const marks = (of: Page) => of.locator(".photo-mark");

interface Marks {
  shapes: { kind: string; from: Share; to: Share; length?: unknown }[];
}

test("an arrow and a scale are drawn with a finger and no signal, and reach another device", async ({
  browser,
}) => {
  await server.stop();
  await addPhoto("HOSE");
  const [before] = await prints(page);
  const hash = before?.[0] ?? "";
  expect(before?.[1]).toBe(hash);
  const path = `finding/hoses/photo/${hash}/marks`;

  await page.locator(".photo-open").first().click();
  await expect(page.getByRole("dialog", { name: "Photo 1 of 1" })).toBeVisible();
  const finger = await context.newCDPSession(page);
  await tool("Arrow");
  await draw(finger, [0.2, 0.2], [0.5, 0.4]);
  await expect(marks(page)).toHaveText(["Arrow"]);
  await draw(finger, [0.5, 0.5], [0.505, 0.5]);
  await expect(page.getByText("That was a tap")).toBeVisible();
  await expect(page.getByRole("button", { name: "Measure", exact: true })).toBeDisabled();

  await tool("Scale");
  await draw(finger, [0.2, 0.6], [0.6, 0.6]);
  await page.getByLabel("How long is it?").fill("two");
  await page.getByRole("button", { name: "Keep", exact: true }).click();
  await expect(page.locator(".photo-form .field-problem")).toBeVisible();
  await page.getByLabel("How long is it?").fill("1 1/2 in");
  await page.getByRole("button", { name: "Keep", exact: true }).click();
  await expect(marks(page)).toHaveText(["Arrow", "Scale: 1.5 in"]);

  await tool("Measure");
  await draw(finger, [0.1, 0.9], [0.9, 0.9]);
  await expect(marks(page).last()).toHaveText(/^Measure: ≈ 3\.?\d* ± 0\.\d+ in$/);
  await expect(page.getByText("It never counts as a measurement of a check")).toBeVisible();

  // One taken away, that undone, and the last one undone as well.
  await marks(page).first().click();
  await page.getByRole("button", { name: "Remove this mark" }).click();
  await expect(marks(page)).toHaveCount(2);
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await expect(marks(page)).toHaveCount(3);
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await expect(marks(page)).toHaveCount(2);

  await page.reload();
  await expect(marks(page)).toHaveText(["Arrow", "Scale: 1.5 in"]);
  await expect(page.locator('.photo-sheet [data-mark="arrow"]')).toHaveCount(1);
  const kept = (await valueAt(page, doc, path)) as Marks;
  expect(kept.shapes.map((shape) => shape.kind)).toEqual(["arrow", "scale"]);
  expect(kept.shapes[1]?.length).toEqual({ n: 1.5, unit: "in" });
  for (const [i, want] of [0.2, 0.2, 0.5, 0.4].entries()) {
    const got = [...(kept.shapes[0]?.from ?? []), ...(kept.shapes[0]?.to ?? [])][i];
    expect(Math.abs((got ?? 9) - want)).toBeLessThan(0.02);
  }
  expect(await prints(page)).toEqual([[hash, hash]]);

  await page.getByRole("link", { name: "Back", exact: true }).click();
  await page.locator(".photo-grid").scrollIntoViewIfNeeded();
  await expect(page.locator('.photo-grid [data-mark="arrow"]')).toHaveCount(1);

  await server.run();
  await checkNow(page);
  await expect(badge(page)).toHaveText("On the server", { timeout: 60_000 });
  const desk = await browser.newContext();
  const other = await desk.newPage();
  await visitOnce(other, gate.url);
  await expect.poll(async () => (await prints(other)).length, { timeout: 60_000 }).toBe(1);
  await other.goto(`${listing}/walk/hoses/photo/${hash}`);
  await expect(marks(other)).toHaveText(["Arrow", "Scale: 1.5 in"]);
  expect(await prints(other)).toEqual([[hash, hash]]);
  await desk.close();

  // The photo taken away takes its marks along, and undo brings both back.
  await page.locator(".photo-open").first().click();
  await page.getByRole("button", { name: "Remove the photo" }).click();
  await expect(page.locator(".photo-open")).toHaveCount(0);
  await expect.poll(() => valueAt(page, doc, path)).toBeNull();
  await page.locator(".strip-undo").click();
  await expect(page.locator(".photo-open")).toHaveCount(1);
  await expect.poll(() => valueAt(page, doc, path)).toEqual(kept);
});

test("two photos of one point stand side by side", async () => {
  await addPhoto("BEFORE");
  await addPhoto("AFTER");
  await page.getByText("Put two photos side by side").click();
  await page.getByRole("button", { name: "Photo 2", exact: true }).click();
  await page.getByRole("button", { name: "Photo 1", exact: true }).click();
  await page.getByRole("button", { name: "Keep side by side" }).click();
  const sides = page.locator(".photo-pair figure");
  await sides.first().scrollIntoViewIfNeeded();
  await expect(sides.locator("figcaption")).toHaveText(["Before", "After"]);
  await expect(sides.locator("img")).toHaveCount(2);
  const [left, right] = await Promise.all([sides.nth(0).boundingBox(), sides.nth(1).boundingBox()]);
  expect(left?.y).toBe(right?.y);
  // As tapped, not as taken: the second one was tapped first.
  const links = await sides.locator("a").evaluateAll((all) => all.map((a) => a.getAttribute("aria-label")));
  expect(links).toEqual(["Before: Open photo 2", "After: Open photo 1"]);
  await sides.locator("a").first().click();
  await page.getByRole("button", { name: "Remove the photo" }).click();
  await expect(page.locator(".photo-pair")).toHaveCount(0);
  await page.locator(".strip-undo").click();
  await expect(page.locator(".photo-pair")).toHaveCount(1);
});

/** One bit of a kept picture turned over, past the app. */
const alter = (of: Page) =>
  of.evaluate(
    () =>
      new Promise<void>((done, fail) => {
        const opening = indexedDB.open("asfound");
        opening.onsuccess = () => {
          const images = opening.result.transaction("images", "readwrite").objectStore("images");
          const all = images.getAll();
          all.onerror = () => fail(all.error);
          all.onsuccess = () => {
            for (const { hash, data } of all.result) {
              const bytes = new Uint8Array(data as ArrayBuffer);
              bytes[bytes.length - 9] = (bytes[bytes.length - 9] ?? 0) ^ 1;
              images.put({ hash, data: bytes.buffer });
            }
            images.transaction.oncomplete = () => {
              opening.result.close();
              done();
            };
          };
        };
      }),
  );

test("an altered picture is noticed, is not shown, and the recorded one is fetched again", async () => {
  await addPhoto("HOSE");
  await checkNow(page);
  await expect(badge(page)).toHaveText("On the server", { timeout: 60_000 });
  const [[hash = ""] = []] = await prints(page);
  await server.stop();
  await alter(page);
  await page.reload();
  const said = "This picture is not the one that was recorded";
  await page.locator(".photo-grid").scrollIntoViewIfNeeded();
  await expect(page.locator(".photo-grid")).toContainText(said);
  await expect(page.locator("img.photo-thumb")).toHaveCount(0);

  await page.goto(`${gate.url}/backup`);
  await page.getByRole("button", { name: "Check all photos" }).click();
  await expect(page.locator("dl.pairs .pair")).toHaveText(["Whole0", "Missing here0", "Altered1"]);
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Export", exact: true }).click();
  await download;
  await expect(page.getByText("1 photo was left out of the file")).toBeVisible();

  await page.getByRole("link", { name: `Altered photo ${hash.slice(0, 12)}` }).click();
  await expect(page.getByRole("alert").first()).toContainText(said);
  await expect(page.locator(".photo-view img")).toHaveCount(0);
  await server.run();
  await page.getByRole("button", { name: "Fetch the recorded one from the server" }).click();
  await expect(page.locator(".photo-sheet img")).toBeVisible({ timeout: 60_000 });
  expect(await prints(page)).toEqual([[hash, hash]]);
});
