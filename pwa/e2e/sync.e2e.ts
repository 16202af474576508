/** Two devices that work apart on one listing come to hold the same bytes, and nothing of either is lost. */
import { type Browser, type BrowserContext, expect, type Page, test } from "@playwright/test";
import { badge, checkNow, fill, grade, gradeButton, openCheck, shiftClock, visitOnce } from "./person.ts";
import { held, heldByServer, type Row, table, valueAt } from "./replica.ts";
import { listingId, seed } from "./seed.ts";
import { Server } from "./server.ts";

let server: Server;
test.beforeEach(async () => {
  server = await Server.start();
});
test.afterEach(() => server.remove());

const id = listingId(1);
const doc = `listing:${id}`;

interface Device {
  context: BrowserContext;
  page: Page;
  listing: string;
}

/** A device that has the listing and everything needed offline. */
async function device(browser: Browser): Promise<Device> {
  const context = await browser.newContext();
  const page = await context.newPage();
  await visitOnce(page, server.url);
  await expect(page.locator(".tag-title")).toHaveCount(1, { timeout: 30_000 });
  return { context, page, listing: `${server.url}/listing/${id}` };
}

/** Both ask until neither has anything to say. */
async function settle(...pages: Page[]): Promise<void> {
  for (const page of [...pages, ...pages.slice(0, -1)]) await checkNow(page);
}

async function expectEqual(...pages: Page[]): Promise<void> {
  for (const page of pages) await expect(badge(page)).toHaveText("On the server");
  const all = await Promise.all(pages.map(held));
  const atServer = await heldByServer(server.url);
  expect(atServer.length).toBeGreaterThan(1000);
  for (const one of all) expect(one).toBe(atServer);
}

/** The conflict box of one field. */
const conflict = (page: Page, title: string | RegExp) =>
  page.locator(".conflict", { has: page.getByRole("heading", { name: title }) });

test("work done apart on two devices converges, and what lost comes back in one tap", async ({ browser }) => {
  await seed(server.url, [{ id, file: "2-lift-half", listing: { title: "Half-walked lift (invented)" } }]);
  const a = await device(browser);
  const b = await device(browser);
  await server.stop();

  await a.page.goto(a.listing);
  await fill(a.page, "Asking price", "1500");
  await openCheck(a.page, a.listing, "hoses");
  await grade(a.page, 3);
  await openCheck(a.page, a.listing, "oil");
  await grade(a.page, 2);

  await b.page.goto(b.listing);
  await fill(b.page, "Asking price", "1400");
  await openCheck(b.page, b.listing, "hoses");
  await grade(b.page, 1);
  await openCheck(b.page, b.listing, "wiring");
  await grade(b.page, 1);
  for (const { page } of [a, b]) await expect(badge(page)).toHaveText("3 waiting for the server");
  expect(await held(a.page)).not.toBe(await held(b.page));

  await server.run();
  await settle(a.page, b.page);
  await expectEqual(a.page, b.page);
  // Each has the other's own check.
  expect(await valueAt(a.page, doc, "finding/wiring/answer")).toEqual({ grade: 1 });
  expect(await valueAt(b.page, doc, "finding/oil/answer")).toEqual({ grade: 2 });

  // The later one counts on both; the earlier one is shown on both.
  for (const { page, listing } of [a, b]) {
    await page.goto(listing);
    await expect(page.getByText("2 fields were entered on two devices")).toBeVisible();
    await expect(page.getByLabel("Asking price").first()).toHaveValue(/1,?400/);
    await expect(conflict(page, "Asking price")).toContainText("1,500");
  }
  await conflict(a.page, "Asking price").getByRole("button", { name: "Use that one" }).click();
  await expect(a.page.getByLabel("Asking price").first()).toHaveValue(/1,?500/);
  await expect(a.page.getByText("1 field was entered on two devices")).toBeVisible();

  // The check's own screen offers the same.
  await openCheck(b.page, b.listing, "hoses");
  await expect(gradeButton(b.page, 1)).toHaveAttribute("aria-pressed", "true");
  await b.page.getByRole("button", { name: "Use that one" }).click();
  await expect(gradeButton(b.page, 3)).toHaveAttribute("aria-pressed", "true");

  await settle(a.page, b.page);
  await expectEqual(a.page, b.page);
  for (const { page, listing } of [a, b]) {
    await page.goto(listing);
    await expect(page.getByLabel("Asking price").first()).toHaveValue(/1,?500/);
    await expect(page.locator(".conflict")).toHaveCount(0);
    expect(await valueAt(page, doc, "finding/hoses/answer")).toEqual({ grade: 3 });
  }
  for (const { context } of [a, b]) await context.close();
});

const year = 366 * 24 * 3600 * 1000;
for (const [name, shift] of [
  ["a year behind", -year],
  ["two days ahead", 2 * 24 * 3600 * 1000],
] as const) {
  test(`a device whose clock is ${name} saves and converges all the same`, async ({ browser }) => {
    await seed(server.url, [{ id, file: "2-lift-half" }]);
    const a = await device(browser);
    const b = await device(browser);
    await server.stop();
    await shiftClock(b.page, shift);
    await openCheck(a.page, a.listing, "hoses");
    await grade(a.page, 3);
    await openCheck(b.page, b.listing, "hoses");
    expect(Math.abs((await b.page.evaluate(() => Date.now())) - Date.now() - shift)).toBeLessThan(60_000);
    await grade(b.page, 1);
    await openCheck(b.page, b.listing, "oil");
    await grade(b.page, 2);
    await b.page.reload();
    await expect(gradeButton(b.page, 2)).toHaveAttribute("aria-pressed", "true");

    await server.run();
    await settle(a.page, b.page);
    await expectEqual(a.page, b.page);
    expect(await valueAt(a.page, doc, "finding/oil/answer")).toEqual({ grade: 2 });
    const both = (await table<Row>(a.page, "rows")).find((r) => r.path === "finding/hoses/answer");
    expect(both?.entries.map((e) => e.value)).toEqual(expect.arrayContaining([{ grade: 1 }, { grade: 3 }]));

    // Decided on the wrong clock, it holds on the right one.
    await openCheck(b.page, b.listing, "hoses");
    await grade(b.page, 4);
    await settle(b.page, a.page);
    await openCheck(a.page, a.listing, "hoses");
    await expect(gradeButton(a.page, 4)).toHaveAttribute("aria-pressed", "true");
    for (const { context } of [a, b]) await context.close();
  });
}
