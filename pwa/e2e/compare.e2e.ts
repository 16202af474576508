/** Listings side by side, up to the decision that closes the comparison; the server stopped from the first on. */
import { type BrowserContext, expect, type Page, test } from "@playwright/test";
import { choose, fill, visitOnce } from "./person.ts";
import { listingId, type Seed, seed } from "./seed.ts";
import { Server } from "./server.ts";

test.describe.configure({ mode: "serial" });

const half = listingId(2);
const listed = listingId(3);
const barred = listingId(1);
const all = Array.from({ length: 9 }, (_, i) => listingId(i + 1));

let server: Server;
let context: BrowserContext;
let page: Page;
const faults: string[] = [];

test.beforeAll(async ({ browser }) => {
  server = await Server.start();
  const seeds: Seed[] = all.map((id, i) => ({
    id,
    file: ["1-lift-walked", "2-lift-half", "3-lift-listed"][i % 3] as string,
    ...(i > 2 ? { listing: { title: `Invented lift ${i + 1}`, asking: (900 + 100 * i) * 100 } } : {}),
    comparables: i === 0,
  }));
  await seed(server.url, seeds);
  context = await browser.newContext();
  page = await context.newPage();
  page.on("pageerror", (e) => faults.push(`${page.url()}: ${e}`));
  await visitOnce(page, server.url);
  await expect(page.locator(".tag-title")).toHaveCount(9, { timeout: 30_000 });
  // No network from here on, and nothing behind it.
  await server.stop();
  await context.setOffline(true);
});
test.afterAll(async () => {
  expect(faults).toEqual([]);
  await context.close();
  await server.remove();
});

const compare = (...ids: string[]) => `${server.url}/compare?of=${ids.join(",")}`;
const cell = (row: string, column: number) =>
  page.locator(`.side-table tr[data-row="${row}"] td`).nth(column);
const reckoned = () =>
  expect(page.locator(".compare")).toHaveAttribute("aria-busy", "false", { timeout: 30_000 });

async function sideBySide(n: number): Promise<void> {
  await expect(page.locator(".side-table thead .letter")).toHaveCount(n, { timeout: 30_000 });
  await reckoned();
}

test("a ninth listing is refused in words, eight stand side by side", async () => {
  await page.goto(`${server.url}/compare`);
  const boxes = page.locator(".choice-item");
  await expect(boxes).toHaveCount(9);
  for (let i = 0; i < 8; i++) await boxes.nth(i).click();
  await expect(page.getByRole("button", { name: "Compare 8" })).toBeEnabled();
  await boxes.nth(8).click();
  await expect(page.getByRole("alert")).toContainText("8 listings can stand side by side. Take one away");
  await expect(boxes.nth(8).locator("input")).not.toBeChecked();
  await page.getByRole("button", { name: "Compare 8" }).click();
  await sideBySide(8);
  for (const row of ["verdict", "all-in", "odds", "safety", "days", "hides", "dearest", "distance"])
    await expect(cell(row, 7)).not.toBeEmpty();
  await expect(page.locator(".bars > li")).toHaveCount(8);
  // An address that names nine opens the choice and says how many to take away.
  await page.goto(compare(...all));
  await expect(page.getByRole("alert")).toContainText("9 listings are chosen; at most 8");
  await expect(page.getByRole("button", { name: "At most 8" })).toBeDisabled();
});

test("what must not be used comes last, with its word and shape, whatever its price", async () => {
  await page.goto(compare(barred, half, listed));
  await sideBySide(3);
  await expect(cell("verdict", 2).locator(".hazard-danger")).toBeVisible();
  await expect(cell("verdict", 2)).toContainText("Do not use");
  const price = page.getByLabel("Price of A", { exact: true });
  await price.fill("1");
  await price.blur();
  await expect(cell("price", 2)).toContainText("asked");
  await reckoned();
  await expect(cell("verdict", 2)).toContainText("Do not use");
  await expect(cell("place", 2)).toContainText("Last");
  await price.fill("much");
  await price.blur();
  await expect(cell("price", 2).getByRole("alert")).toBeVisible();
  await price.fill("");
  await price.blur();
  await expect(cell("price", 2)).not.toContainText("asked");
  await expect(price).toHaveValue("2100");
});

test("a price tried moves the odds and the plain sentence", async () => {
  await page.goto(compare(half, listed));
  await sideBySide(2);
  const column = (await page.locator(".side-table thead .letter").allTextContents()).indexOf("A");
  const before = await cell("odds", column).textContent();
  await page.getByLabel("Price of A", { exact: true }).fill("10");
  await expect(cell("odds", column)).not.toHaveText(before ?? "", { timeout: 20_000 });
  await reckoned();
  await expect(page.locator(".offer-says")).toContainText(/is the better buy: ahead of|None of those/);
  await expect(page.locator(".page")).toContainText(/Should it turn out|No single point/);
});

let decision = "";
let kept: string[] = [];

const keptTexts = async () => {
  await expect(page.locator(".side-table thead .letter")).toHaveCount(3, { timeout: 20_000 });
  return page.locator(".decision > section, .decision h2").allTextContents();
};

test("a decision asks for what it needs, and for words about what must not be used", async () => {
  await page.goto(compare(barred, half, listed));
  await sideBySide(3);
  await page.getByRole("link", { name: "Write down the decision" }).click();
  const write = page.getByRole("button", { name: "Write it down" });
  await write.click();
  await expect(page.getByText("2 things are missing or wrong:")).toBeVisible();
  await choose(page, /^Bought A/);
  await expect(page.getByRole("textbox", { name: "Price (USD)" })).toHaveValue("2100");
  await fill(page, "Price (USD)", "-5");
  await fill(page, /^Because$/, "The frame is straight, and the cable is to be had.");
  await write.click();
  await expect(page.getByText("2 things are missing or wrong:")).toBeVisible();
  await expect(
    page.getByText("Write in your own words what happens before it is used.").first(),
  ).toBeVisible();
  await fill(page, "Price (USD)", "4,000.50");
  await fill(page, "What happens before it is used", "Tagged out until both cables are new.");
  await page.getByText("Let B go").click();
  await write.click();
  await expect(page).toHaveURL(/\/decisions\/[0-9a-z]{26}$/);
  decision = page.url();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Bought A at $4,000.50");
  const said = page.locator(".decide-plainly");
  await expect(said).toContainText("It must not be used as it was found.");
  await expect(said).toContainText(/were not checked|was not checked/);
  await expect(page.getByText("Tagged out until both cables are new.")).toBeVisible();
  await expect(page.getByText("Because: The frame is straight")).toBeVisible();
  kept = await keptTexts();
  expect(kept.join(" ")).toContain("asked $2,100");
});

test("it reads the same after a reload and after its listing changed, still offline", async () => {
  await page.reload();
  expect(await keptTexts()).toEqual(kept);
  await page.goto(`${server.url}/listing/${barred}/offer`);
  await fill(page, /asking/i, "100");
  await page.goto(`${server.url}/listing/${barred}`);
  await fill(page, /^Title/, "Renamed since");
  await page.goto(compare(barred, half, listed));
  await sideBySide(3);
  await expect(page.locator(".side-table thead")).toContainText("Renamed since");
  await page.goto(`${server.url}/decisions`);
  await page.getByRole("link", { name: /Bought A at \$4,000\.50/ }).click();
  expect(await keptTexts()).toEqual(kept);
  await expect(page.getByText("Renamed since")).toHaveCount(0);
});

test("it is withdrawn and stays, marked", async () => {
  await page.goto(decision);
  await page.getByRole("button", { name: "Withdraw this decision" }).click();
  await page.getByRole("button", { name: "Yes, withdraw it" }).click();
  await expect(page.getByText(/^Withdrawn on/)).toBeVisible();
  await expect(page.getByRole("button", { name: "Withdraw this decision" })).toHaveCount(0);
  await page.goto(`${server.url}/decisions`);
  await expect(page.locator(".row-link")).toContainText("withdrawn");
});

test("none of them is a decision too, and it arrives once there is a server", async () => {
  await page.goto(`${server.url}/compare/decide?of=${half},${listed}`);
  await choose(page, /^None of them$/);
  await fill(page, /^Because$/, "Both ask too much.");
  await page.getByRole("button", { name: "Write it down" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("None of them bought");
  await context.setOffline(false);
  await server.run();
  const other = await context.browser()?.newContext();
  if (!other) throw new Error("no browser");
  try {
    const there = await other.newPage();
    await there.goto(`${server.url}/decisions`);
    await expect(there.locator(".row-link")).toHaveCount(2, { timeout: 60_000 });
  } finally {
    await other.close();
  }
});
