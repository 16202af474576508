/** Whether it fits the shop and how it gets there, told and worked out with the server gone. */
import { type BrowserContext, expect, type Page, test } from "@playwright/test";
import { choose, fill, visitOnce } from "./person.ts";
import { listingId, seed } from "./seed.ts";
import { Server } from "./server.ts";

const lift = listingId(1);

test.describe.configure({ mode: "serial" });

let server: Server;
let context: BrowserContext;
let page: Page;
const faults: string[] = [];

test.beforeAll(async ({ browser }) => {
  server = await Server.start();
  await seed(server.url, [{ id: lift, file: "1-lift-walked", comparables: true }]);
  context = await browser.newContext();
  page = await context.newPage();
  page.on("pageerror", (e) => faults.push(`${page.url()}: ${e}`));
  await visitOnce(page, server.url);
  await expect(page.locator(".tag-title")).toHaveCount(1, { timeout: 30_000 });
  await server.stop();
  await context.setOffline(true);
});
test.afterAll(async () => {
  await context.close();
  await server.remove();
});

/** The last change is kept: a page that is left at once does not wait for the engine to read it. */
const kept = (label: string) => expect(page.locator(".strip-undo")).toContainText(label);

const point = (title: string) => page.locator("details.fold", { hasText: title }).first();

test("the shop is told field by field, and what cannot be is refused in words", async () => {
  await page.goto(`${server.url}/settings`);
  await page.getByRole("link", { name: /^Your shop/ }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Your shop" })).toBeVisible();
  await fill(page, "Ceiling", "2");
  await expect(page.getByText("2 ft cannot be: 4 ft to 100 ft")).toBeVisible();
  await fill(page, "Ceiling", "13");
  await expect(page.getByText("cannot be")).toHaveCount(0);
  await choose(page, "Single-phase");
  await fill(page, "Voltage", "240");
  await fill(page, "Free in the panel", "60");
  const trailer = page.getByRole("region", { name: "Your trailer" });
  const [rated, empty] = ["May weigh in all", "Weighs empty"].map((l) =>
    trailer.getByLabel(l, { exact: true }),
  );
  await rated?.fill("3000");
  await empty?.fill("3500");
  await empty?.blur();
  await expect(page.getByText("empty it cannot weigh 3,500 lb: less than the rated weight")).toBeVisible();
  await empty?.fill("1100");
  await empty?.blur();
  await page.getByLabel("Another kind").selectOption("webbing 2 in");
  await fill(page, "webbing 2 in: how many", "4");
  await kept("webbing 2 in");
  await page.reload();
  await expect(page.getByLabel("Ceiling", { exact: true })).toHaveValue("13");
  await expect(page.getByLabel("webbing 2 in: how many")).toHaveValue("4");
});

test("a three-phase lift in a single-phase shop fits with work, and brings what it costs", async () => {
  await page.goto(`${server.url}/listing/${lift}`);
  const fitStep = page.locator("a.way", { hasText: "Fit with your shop" });
  await expect(fitStep).toContainText("not known");
  await page
    .locator("fieldset", { hasText: "What does the motor plate say?" })
    .locator("label", { hasText: "Three-phase" })
    .click();
  await page.getByText("Size and supply").click();
  await fill(page, "Main motor", "2");
  await fill(page, "Voltage", "230");
  await kept("Voltage");
  await page.goto(`${server.url}/listing/${lift}/estimate`);
  const line = page.locator("details.fold", { hasText: "Phase converter, wired" }).first();
  await expect(line.locator("> summary")).not.toContainText("left out", { timeout: 20_000 });

  await page.goto(`${server.url}/listing/${lift}/fit`);
  const supply = point("Three-phase supply");
  await expect(supply.locator("> summary")).toContainText("with work", { timeout: 20_000 });
  await supply.locator("> summary").click();
  await expect(supply.getByText("A licensed electrician decides").first()).toBeVisible();
  await expect(
    supply.getByText("Where this comes from").or(supply.getByText("Source")).first(),
  ).toBeVisible();
  await supply.getByRole("link", { name: /Phase converter/ }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Repair estimate" })).toBeVisible();

  await line.locator("> summary").click();
  await expect(line.getByText("Counts because of the fit with your shop")).toBeVisible();
  await line.getByText("Count this cost").click();
  await expect(line.locator("> summary")).toContainText("left out", { timeout: 20_000 });
  await expect(line.getByText("Your own choice.")).toBeVisible();
  await line.getByRole("button", { name: "Let the fit with your shop decide" }).click();
  await expect(line.locator("> summary")).not.toContainText("left out", { timeout: 20_000 });
});

test("a line that the fit leaves out can be counted on purpose", async () => {
  await page.goto(`${server.url}/listing/${lift}`);
  await page
    .locator("fieldset", { hasText: "What does the motor plate say?" })
    .locator("label", { hasText: "Single-phase" })
    .click();
  await page.goto(`${server.url}/shop`);
  await choose(page, "Three-phase");
  await kept("Phases in your shop");
  await page.goto(`${server.url}/listing/${lift}`);
  await page
    .locator("fieldset", { hasText: "What does the motor plate say?" })
    .locator("label", { hasText: "Three-phase" })
    .click();
  await page.goto(`${server.url}/listing/${lift}/estimate`);
  const line = page.locator("details.fold", { hasText: "Phase converter, wired" }).first();
  await expect(line.locator("> summary")).toContainText("left out", { timeout: 20_000 });
  await line.locator("> summary").click();
  await expect(line.getByText("Left out: by the fit with your shop")).toBeVisible();
  await line.getByText("Count this cost").click();
  await expect(line.locator("> summary")).not.toContainText("left out", { timeout: 20_000 });
});

test("the way home opens with its cautions, and tells pieces, gear and steps", async () => {
  await page.goto(`${server.url}/listing/${lift}`);
  await page.locator("a.way", { hasText: "Getting it home" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Getting it home" })).toBeVisible();
  const first = page.locator("main .caution-card, main section").first();
  await expect(first).toHaveClass(/caution-card/, { timeout: 20_000 });
  await expect(page.getByRole("region", { name: "What is moved" }).locator("details")).not.toHaveCount(0);
  await expect(page.getByRole("region", { name: "Take along" })).toContainText("4 × Webbing 2 in");
  expect(await page.getByRole("region", { name: "Step by step" }).locator("li").count()).toBeGreaterThan(5);
  const ties = point("Tie-downs");
  await ties.locator("> summary").click();
  await expect(ties.getByText(/49 CFR 393/).first()).toBeAttached();
  // What is missing leads to where it is told.
  const payload = point("Truck payload");
  await payload.locator("> summary").click();
  await payload
    .getByRole("link", { name: /Your truck/ })
    .first()
    .click();
  await expect(page.getByRole("heading", { level: 1, name: "Your shop" })).toBeVisible();
  expect(faults).toEqual([]);
});
