/**
 * The job as a person does it: visit once, stop the server, appraise a lift from
 * the first check to the three prices, start the server, see it on a second device.
 */
import { expect, type Page, test } from "@playwright/test";
import { checkNow, choose, fill, picture, visitOnce } from "./person.ts";
import { Server } from "./server.ts";

let server: Server;
test.beforeAll(async () => {
  server = await Server.start();
});
test.afterAll(() => server.remove());

const prices = async (page: Page) =>
  (await page.locator(".price-figure").allTextContents()).map((t) => t.trim());

test("a two-post lift is appraised with the server stopped, and then shared", async ({ browser }) => {
  const phone = await browser.newContext();
  const page = await phone.newPage();
  const faults: string[] = [];
  page.on("pageerror", (e) => faults.push(String(e)));
  await visitOnce(page, server.url);
  await server.stop();
  await page.reload();
  await expect(page.getByRole("heading", { name: "Listings" })).toBeVisible();

  await page.getByRole("link", { name: "Add a listing" }).click();
  await page.getByRole("button", { name: /^Two-post lift/ }).click();
  await expect(page).toHaveURL(/\/listing\//);
  const listing = page.url();
  const title = "Lift behind the old dairy (invented)";
  await fill(page, "Title", title);
  await fill(page, "Asking price", "2,100");
  await fill(page, "Place", "Quarry Hill (invented)");
  await fill(page, /^Distance/, "46");
  await fill(page, "Year made", "2014");
  await fill(page, /^Rated load/, "9000");
  await page.getByLabel("Who sells it").selectOption("closing");
  for (const fact of [
    "Installed and connected",
    "It will be moved",
    "Overhead beam",
    "Chains lift, cables level",
    "Single-phase",
  ]) {
    await choose(page, fact);
  }
  await choose(page, /^Asymmetric/);

  await page.getByRole("link", { name: "Walk around it" }).first().click();
  await page.getByRole("button", { name: "I have read these" }).click();
  await page.getByRole("link", { name: "Next open check" }).click();
  let graded = 0;
  let skipped = 0;
  let photographed = false;
  for (let i = 0; i < 80; i++) {
    const state = await page.locator(".check-state").textContent();
    if (state?.startsWith("Under load")) {
      await page.getByRole("button", { name: "Seller declined" }).click();
      skipped++;
    } else {
      const pads = await page.getByRole("heading", { level: 1 }).textContent();
      const grade = pads?.includes("Pads") ? 1 : 3;
      const button = page.locator(".grade", { hasText: new RegExp(`^\\D*${grade}`) }).first();
      await ((await button.count()) > 0 ? button : page.locator(".grade").first()).click();
      graded++;
      if (!photographed) {
        await page
          .locator('input[type="file"]')
          .first()
          .setInputFiles({
            name: "plate.jpg",
            mimeType: "image/jpeg",
            buffer: await picture(page, "PLATE 9000 LB"),
          });
        await expect(page.locator(".photo-thumb")).toBeVisible();
        photographed = true;
      }
    }
    await expect(page.locator('.grade[aria-pressed="true"], .skip-reason[aria-pressed="true"]')).toHaveCount(
      1,
    );
    const next = page.getByRole("link", { name: "Next open" });
    if ((await next.count()) === 0) break;
    const before = page.url();
    await next.click();
    await expect(page).not.toHaveURL(before);
  }
  expect(graded).toBeGreaterThanOrEqual(25);
  expect(skipped).toBeGreaterThanOrEqual(1);

  await page.goto(`${listing}/offer`);
  await expect(page.getByText("Nothing says yet what a sound one is worth")).toBeVisible();
  await page.getByRole("link", { name: "Add or change comparables" }).click();
  await page.getByRole("button", { name: "Add a comparable" }).click();
  await fill(page, "What it is", "Two-post, sold in spring (invented)");
  await fill(page, /^Price/, "7900");
  await choose(page, "paid");

  await page.goto(`${listing}/result`);
  await expect(page.getByText("Not proven").first()).toBeVisible();
  await expect(page.locator(".stamp-title")).toHaveText("Not proven");
  await page.goto(`${listing}/estimate`);
  await expect(page.getByText("Pads renewed, all four").first()).toBeVisible();
  await page.goto(`${listing}/offer`);
  await expect(page.locator(".price-figure")).toHaveCount(3);
  const here = await prices(page);
  expect(here.every((p) => /\d/.test(p))).toBe(true);

  // A tab closed at any moment loses nothing: the very same figures after it.
  await page.close();
  const again = await phone.newPage();
  await again.goto(`${listing}/offer`);
  await expect(again.locator(".price-figure")).toHaveCount(3);
  expect(await prices(again)).toEqual(here);

  await server.run();
  await again.reload();
  await expect(again.getByRole("button", { name: "On the server" })).toBeVisible({ timeout: 60_000 });

  const second = await browser.newContext();
  const other = await second.newPage();
  // Its pictures come late: the screen that waits for one must show it by itself.
  await second.route("**/api/photos/**", (route) => route.abort());
  await other.goto(server.url);
  await expect(other.getByText(title)).toBeVisible({ timeout: 30_000 });
  await other.goto(`${listing}/offer`);
  await expect(other.locator(".price-figure")).toHaveCount(3, { timeout: 30_000 });
  expect(await prices(other)).toEqual(here);
  await other.goto(`${listing}/walk/capacity-plate`);
  const read = other.getByRole("button", { name: "I have read these" });
  await read.click();
  await expect(other.getByText("Photo not on this device yet")).toBeVisible();
  await second.unroute("**/api/photos/**");
  await checkNow(other);
  await expect(other.locator("img.photo-thumb")).toBeVisible({ timeout: 30_000 });
  const drawn = await other.locator("img.photo-thumb").evaluate((img: HTMLImageElement) => img.naturalWidth);
  expect(drawn).toBeGreaterThan(100);
  expect(faults).toEqual([]);
  await phone.close();
  await second.close();
});
