/** Measured limits by themselves, as a calculator: offline, by subject, and from a check. */
import { type BrowserContext, expect, type Page, test } from "@playwright/test";
import { choose, fill, openCheck, visitOnce } from "./person.ts";
import { listingId, seed } from "./seed.ts";
import { Server } from "./server.ts";

// The last ones work with the server that the first ones stopped.
test.describe.configure({ mode: "serial" });

const lift = listingId(1);
let server: Server;
let context: BrowserContext;
let page: Page;
const faults: string[] = [];

test.beforeAll(async ({ browser }) => {
  server = await Server.start();
  context = await browser.newContext();
  page = await context.newPage();
  page.on("pageerror", (e) => faults.push(String(e)));
  await visitOnce(page, server.url);
  await seed(server.url, [{ id: lift, file: "1-lift-walked" }]);
  await page.reload();
  await expect(page.locator(".tag-title")).toHaveCount(1, { timeout: 30_000 });
});
test.afterAll(async () => {
  expect(faults).toEqual([]);
  await context.close();
  await server.remove();
});

const result = () => page.locator(".limit");
const group = (title: string) =>
  page.locator(".limit-group", { has: page.getByRole("heading", { name: title }) });

test("a measured check opens in the calculator with its values, and leads back", async () => {
  await openCheck(page, `${server.url}/listing/${lift}`, "cable-diameter");
  const before = await result().locator(".limit-finding").textContent();
  await expect(result().locator(".chart svg")).toHaveAttribute("aria-label", /^Value .*, limit /);
  await page.getByRole("link", { name: "Open in the bench calculator" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Wire rope: loss of diameter" })).toBeVisible();
  await expect(page).toHaveURL(/\/bench\/rope-diameter\?_from=/);
  await expect(page.getByLabel(/^measured rope diameter$/i)).not.toHaveValue("");
  await expect(result().locator(".limit-finding")).toHaveText(before ?? "");
  await page.getByRole("link", { name: "Back to the check" }).click();
  await expect(page.locator(".grade").first()).toBeVisible();
});

test("a rope, with the server stopped: as typed, wrong, and by the maker's figure", async () => {
  await server.stop();
  await page.goto(`${server.url}/settings`);
  await page.getByRole("link", { name: "Bench calculator" }).click();
  await page.getByText("Ropes and chains").click();
  await page.getByRole("link", { name: "Wire rope: loss of diameter", exact: true }).click();
  await expect(page.locator(".read-first")).toContainText("the lift maker's limit overrides");
  const measured = page.getByLabel(/^measured rope diameter$/i);
  const nominal = page.getByLabel(/^nominal rope diameter$/i);
  await fill(page, "Nominal rope diameter", "3/8");
  await expect(page.getByText("Enter what is asked above")).toBeVisible();
  // While it is typed, without leaving the field.
  await measured.pressSequentially("0.352");
  await expect(result().locator(".limit-finding")).toHaveText("beyond limit");
  await expect(nominal).toHaveValue("3/8");
  await expect(result()).toContainText("29 CFR 1926.1413");
  await expect(result().locator(".standing-stamp")).toHaveText("published");
  await expect(result().locator(".chart-label")).toHaveText(["limit 5 %", "value 6.133 %"]);

  // A text the engine cannot read leaves no older result behind.
  await fill(page, "Measured rope diameter", "0,36 psi");
  const problem = page.locator(".field", { has: measured }).getByRole("alert");
  await expect(problem).toContainText('"psi" is a unit of pressure, not of length');
  await expect(result()).toHaveCount(0);
  await fill(page, "Measured rope diameter", "0.9");
  await expect(problem).toHaveText(/^0\.9 in does not fit a rope of nominal 0\.375 in/);
  await expect(result()).toHaveCount(0);
  await fill(page, "Measured rope diameter", "9,3 mm");
  await expect(measured).toHaveValue("9.3");
  await expect(page.getByLabel("Unit of measured rope diameter")).toHaveValue("mm");
  await expect(result().locator(".limit-finding")).toHaveText("within limit");
  await expect(page.getByRole("alert")).toHaveCount(0);

  await page.getByText("The maker's own figure").click();
  await fill(page, "Maker's figure", "9.4 mm");
  await expect(result().locator(".limit-finding")).toHaveText("beyond limit");
  await expect(result().locator(".standing-stamp")).toHaveText("maker's own figure");
});

test("a thread from calliper and pitch: what it is, what was forced in, what a repair costs", async () => {
  // Within the app: a reload would be a new visit.
  await page.getByRole("link", { name: "Bench calculator" }).click();
  await fill(page, "Find a limit", "thread which");
  await page.getByRole("link", { name: "Which thread is this" }).click();
  await fill(page, /^measured diameter/i, "0.37");
  // Pitch or threads per inch: one of them is enough.
  await expect(page.getByText("Enter what is asked above")).toBeVisible();
  await fill(page, "Threads per inch", "16");
  await expect(result()).toContainText("The nearest standard thread is 3/8-16 UNC");
  await expect(group("Nearest standard threads").locator("b").first()).toHaveText("3/8-16 UNC");
  await expect(group("Easily mistaken for")).toContainText("M10x1.5");
  await expect(group("Probably forced into")).toContainText("A 3/8-16 UNC bolt in a M10x1.5 hole", {
    ignoreCase: true,
  });
  await expect(result().locator("dl").getByText("Tap drill")).toBeVisible();
  await expect(group("Repairs").locator(".limit-price")).toHaveCount(3);
  await expect(group("Repairs").locator(".limit-price").first()).toContainText(
    /Tap or die of one size: \$6 \/ \$14 \/ \$35 per piece\s*example of \d{4}-/,
  );
  // As the bore of a nut it fits nothing; the nearest are named all the same.
  await choose(page, "internal");
  await expect(result()).toContainText("No thread of the table");
  await expect(group("Nearest standard threads").locator("li")).toHaveCount(3);
  await fill(page, /^measured diameter/i, "5/16");
  await expect(result()).toContainText("The nearest standard thread is 3/8-16 UNC");
  await expect(group("Probably forced in")).toContainText("M10x1.5 bolt in a 3/8-16 UNC hole");
  await fill(page, /^pitch$/i, "1.5");
  await expect(page.locator(".field", { has: page.getByLabel(/^pitch$/i) })).toContainText("both given");
  await fill(page, "Threads per inch", "");
  await expect(result()).toContainText("The nearest standard thread is");
});

test("entries stay for the visit, each with its limit, until they are cleared", async () => {
  await page.getByRole("link", { name: "Bench calculator" }).click();
  await expect(page.getByRole("link", { name: "Wire rope: loss of diameter has entries" })).toBeVisible();
  await page.getByRole("link", { name: "Wire rope: loss of diameter has entries" }).click();
  await expect(page.getByLabel(/^nominal rope diameter$/i)).toHaveValue("3/8");
  await expect(page.getByLabel(/^measured rope diameter$/i)).toHaveValue("9.3");
  await expect(result().locator(".standing-stamp")).toHaveText("maker's own figure");
  await page.getByRole("button", { name: "Clear these entries" }).click();
  await expect(page.getByLabel(/^measured rope diameter$/i)).toHaveValue("");
  await expect(result()).toHaveCount(0);
  await page.goto(`${server.url}/bench/no-such-limit`);
  await expect(page.getByText("There is no such limit.")).toBeVisible();
});
