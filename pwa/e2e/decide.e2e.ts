/** From a walked listing to a decision: why, what to check in the minutes left, which of several. */
import { type BrowserContext, expect, type Page, test } from "@playwright/test";
import { fill, visitOnce } from "./person.ts";
import { listingId, seed } from "./seed.ts";
import { Server } from "./server.ts";

const walked = listingId(1);
const half = listingId(2);
const press = listingId(4);

test.describe.configure({ mode: "serial" });

let server: Server;
let context: BrowserContext;
let page: Page;
const faults: string[] = [];

test.beforeAll(async ({ browser }) => {
  server = await Server.start();
  await seed(server.url, [
    { id: walked, file: "1-lift-walked", comparables: true },
    { id: half, file: "2-lift-half" },
    { id: press, file: "4-press", comparables: true },
  ]);
  context = await browser.newContext();
  page = await context.newPage();
  page.on("pageerror", (e) => faults.push(`${page.url()}: ${e}`));
  await visitOnce(page, server.url);
  await expect(page.locator(".tag-title")).toHaveCount(3, { timeout: 30_000 });
});
test.afterAll(async () => {
  await context.close();
  await server.remove();
});

const result = (id: string) => `${server.url}/listing/${id}/result`;

/** Titles and minutes of the short list. */
async function planned(): Promise<{ titles: string[]; minutes: number }> {
  await expect(page.locator(".plan-says")).toBeVisible({ timeout: 20_000 });
  const rows = page.locator(".plan-list > li");
  const titles = await rows.locator(".row-main").allTextContents();
  const asides = await rows.locator(".row-aside").allTextContents();
  return { titles, minutes: asides.reduce((sum, text) => sum + Number.parseFloat(text), 0) };
}

test("the plan fits the minutes, follows them, and leads to its checks", async () => {
  await page.goto(result(half));
  const usual = await planned();
  expect(usual.titles.length).toBeGreaterThan(0);
  expect(usual.minutes).toBeLessThanOrEqual(15);
  await fill(page, /^Minutes I have$/, "40");
  await expect.poll(async () => (await planned()).minutes).toBeGreaterThan(15);
  expect((await planned()).minutes).toBeLessThanOrEqual(40);
  await page.getByRole("button", { name: "More: Minutes I have" }).click();
  await expect(page.getByLabel("Minutes I have", { exact: true })).toHaveValue("45");
  await fill(page, /^Minutes I have$/, "soon");
  await expect(page.getByText("“soon” is not a number")).toBeVisible();
  await fill(page, /^Minutes I have$/, "5");
  await expect.poll(async () => (await planned()).minutes).toBeLessThanOrEqual(5);
  const first = page.locator(".plan-list a").first();
  const to = await first.getAttribute("href");
  await first.click();
  await expect(page).toHaveURL(`${server.url}${to}`);
  // The minutes are of this visit: they are there on coming back, and no record was made of them.
  await page.goBack();
  await expect(page.getByLabel("Minutes I have", { exact: true })).toHaveValue("5");
  await expect(page.locator(".strip-undo")).toBeHidden();
});

test("a figure tells why by key, down to its inputs, and closes again", async () => {
  await page.goto(result(walked));
  const fair = page.locator(".price", { hasText: "Fair offer" });
  const why = fair.getByRole("button", { name: /^Why\?.*Fair offer/ });
  await why.focus();
  await page.keyboard.press("Enter");
  await expect(why).toHaveAttribute("aria-expanded", "true");
  const told = fair.getByRole("region", { name: /^Fair offer: [\d,]+$/ });
  await expect(told).toBeVisible();
  const deeper = told.getByRole("button", { name: /^Why .*Worth in place/ }).first();
  await deeper.focus();
  await page.keyboard.press("Space");
  await expect(told.getByRole("region", { name: /^Worth in place/ })).toBeVisible();
  await why.click();
  await expect(told).toHaveCount(0);
});

test("an own belief counts when it makes a whole, and is taken back", async () => {
  await page.goto(result(half));
  const before = page.locator(".care-classes li", { hasText: "neglected" }).locator(".faint");
  const usual = await before.textContent();
  await page.getByText("Your own belief before looking").click();
  await fill(page, "well kept (%)", "10");
  await expect(page.getByText(/make \d.*they must make 100/)).toBeVisible();
  expect(await before.textContent()).toBe(usual);
  await fill(page, "ordinary (%)", "10");
  await fill(page, "neglected (%)", "80");
  await expect(before).toHaveText("80% before looking", { timeout: 20_000 });
  await page.getByRole("button", { name: "Back to what is usual" }).click();
  await expect(before).toHaveText(usual ?? "", { timeout: 20_000 });
});

test("listings stand side by side, ranked by the shop's own weights", async () => {
  await page.goto(server.url);
  await page.getByRole("link", { name: "Compare", exact: true }).click();
  await expect(page.getByRole("button", { name: "Choose two or more" })).toBeDisabled();
  await expect(page.locator(".choice-item")).toHaveCount(3); // .all() below does not wait
  for (const title of await page.locator(".choice-item").all()) await title.click();
  await page.getByRole("button", { name: "Compare 3" }).click();
  await expect(page.locator(".side-table thead .letter")).toHaveCount(3, { timeout: 20_000 });
  expect(new URL(page.url()).searchParams.get("of")?.split(",").sort()).toEqual([walked, half, press].sort());
  await expect(page.locator(".offer-says p").first()).toHaveText(/\.$/);
  // One that must not be used stands last, with its verdict.
  const last = page.locator('.side-table tr[data-row="verdict"] td').last();
  await expect(last).toContainText("Do not use");
  // Of a pair, one is better as often as the other is not.
  const cells = (await page.locator(".better tbody tr").nth(0).locator("td").allTextContents()).map((text) =>
    Number(/better than . in (\d+)/.exec(text)?.[1] ?? Number.NaN),
  );
  const column = (await page.locator(".better tbody tr td:nth-of-type(1)").allTextContents()).map((text) =>
    Number(/better than . in (\d+)/.exec(text)?.[1] ?? Number.NaN),
  );
  for (const [i, n] of cells.entries()) {
    if (i > 0 && !Number.isNaN(n))
      expect(Math.abs(n + (column[i] ?? Number.NaN) - 100)).toBeLessThanOrEqual(1);
  }
  await page.reload();
  await expect(page.locator(".side-table thead .letter")).toHaveCount(3, { timeout: 20_000 });
  const weight = page.getByLabel("Distance", { exact: true });
  const usual = Number(await weight.inputValue());
  await page.getByRole("button", { name: "More: Distance" }).click();
  await expect(weight).toHaveValue(String(usual + 10));
  await expect(page.getByRole("button", { name: "Undo: Weight: Distance" })).toBeVisible();
  await page.getByRole("button", { name: "Back to the usual weights" }).click();
  await expect(weight).toHaveValue(String(usual));
  await expect(last).toContainText("Do not use");
  expect(faults).toEqual([]);
});

test("all weights but one may be nothing", async () => {
  const labels = await page.locator(".weights label").allTextContents();
  for (const label of labels) await fill(page, new RegExp(`^${label}$`), "0");
  await expect(page.getByText("At least one must count")).toBeVisible();
  await page.getByRole("button", { name: "Back to the usual weights" }).click();
  await expect(page.locator(".side-table thead .letter")).toHaveCount(3);
  expect(faults).toEqual([]);
});
