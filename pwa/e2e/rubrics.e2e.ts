/** A rubric of the shop's own: copied, changed, saved, walked by; and moving an appraisal to a newer version. */
import { readFileSync } from "node:fs";
import { type BrowserContext, expect, type Page, test } from "@playwright/test";
import { fill, grade, openCheck, visitOnce } from "./person.ts";
import { Server } from "./server.ts";

// The editor is checked anew after every change; a busy machine takes its time for it.
const patient = expect.configure({ timeout: 30_000 });

test.describe.configure({ mode: "serial" });

let server: Server;
let context: BrowserContext;
let page: Page;
const faults: string[] = [];
const at = (path: string) => `${server.url}${path}`;

test.beforeAll(async ({ browser }) => {
  server = await Server.start();
  context = await browser.newContext({ acceptDownloads: true });
  page = await context.newPage();
  page.on("pageerror", (e) => faults.push(`${page.url()}: ${e}`));
  page.on("dialog", (d) => faults.push(`a dialog: ${d.message()}`));
  await visitOnce(page, server.url);
  // From here on there is no server: the editor too must come from this device.
  await server.stop();
});
test.afterAll(async () => {
  await context.close();
  await server.remove();
  expect(faults).toEqual([]);
});

const own = "own-h-frame-press";
const saveAs = (n: number) => page.getByRole("button", { name: `Save as version ${n}` });
let listing = "";

test("a copied rubric is changed, refused while it is wrong, and saved", async () => {
  await page.goto(at("/rubrics"));
  await page
    .locator(".field", { hasText: "H-frame press" })
    .getByRole("button", { name: "Copy to make your own" })
    .click();
  await page.getByRole("link", { name: "Edit" }).click();
  await patient(page.getByText("It keeps to all rules of a rubric.")).toBeVisible({ timeout: 60_000 });
  await page.getByRole("link", { name: /Plate and rated force/ }).click();
  await fill(page, "What is looked at", "");
  await patient(page.getByText(/“New point”, title/)).toBeVisible();
  await patient(saveAs(2)).toBeDisabled();
  await fill(page, "What is looked at", "Plate <script>alert(1)</script>");
  await fill(page, "Weight for safety", "9");
  await patient(saveAs(2)).toBeEnabled();
  // Nothing of it is lost by leaving.
  await page.reload();
  await patient(page.getByLabel("What is looked at")).toHaveValue("Plate <script>alert(1)</script>");
  await saveAs(2).click();
  await patient(page.getByText("Version 2 is saved.")).toBeVisible();
});

test("an appraisal is made with it, and its words are words", async () => {
  await page.goto(at("/new"));
  await page.locator("button.kind", { hasText: "H-frame press (own)" }).click();
  await patient(page).toHaveURL(/\/listing\//);
  listing = page.url();
  await openCheck(page, listing, "rating-plate");
  await patient(page.getByRole("heading", { level: 1 })).toContainText("Plate <script>alert(1)</script>");
  await grade(page, 1);
  await page.goto(listing);
  await patient(page.getByText("Made with version 2 of its rubric.")).toBeVisible({ timeout: 20_000 });
});

test("text is checked line by line as it is typed", async () => {
  await page.goto(at(`/rubrics/${own}/text`));
  const text = page.locator("textarea");
  await patient(page.getByText("It keeps to all rules of a rubric.")).toBeVisible({ timeout: 30_000 });
  const good = await text.inputValue();
  // A long text typed key by key takes the browser many seconds; pasted it comes at once.
  const put = (words: string) =>
    text.evaluate((node, value) => {
      (node as HTMLTextAreaElement).value = value;
      node.dispatchEvent(new Event("input", { bubbles: true }));
    }, words);
  await put(good.replace("hazard: danger", "hazard: terrible"));
  await patient(page.getByText(/Line \d+.*"terrible" is not known/)).toBeVisible();
  await patient(page.getByRole("button", { name: "Take this text" })).toBeDisabled();
  await page.goto(at("/rubrics"));
  await page.goto(at(`/rubrics/${own}/text`));
  await put(good.replace(/- id: rating-plate/, "- id: nameplate"));
  await page.getByRole("button", { name: "Take this text" }).click();
  await saveAs(3).click();
  await patient(page.getByText("Version 3 is saved.")).toBeVisible();
});

test("the appraisal keeps its version until it is moved, and every finding after", async () => {
  await page.goto(`${listing}/result`);
  await page.goto(listing);
  await patient(page.getByText(/Made with version 2 of its rubric; version 3 is here/)).toBeVisible({
    timeout: 20_000,
  });
  await page.getByRole("button", { name: "See what would change" }).click();
  await patient(page.getByText("what you found stays, but counts for nothing")).toBeVisible();
  await page.getByRole("button", { name: "Move to version 3" }).click();
  await patient(page.getByText("Made with version 3 of its rubric.")).toBeVisible();
  await page.goto(`${listing}/result`);
  await patient(page.getByText(/rating-plate.*has no check in this rubric any more/)).toBeVisible({
    timeout: 20_000,
  });
});

test("weights by pairs keep the total and tell when answers contradict each other", async () => {
  await page.goto(at(`/rubrics/${own}/weights`));
  const pairs = page.locator("#main select");
  await patient(page.getByText(/^Consistency ratio 0 /)).toBeVisible({ timeout: 30_000 });
  await pairs.nth(1).selectOption("9");
  await pairs.nth(2).selectOption("-9");
  await patient(page.getByText("The answers contradict each other.")).toBeVisible();
  // All alike agree again.
  await pairs.nth(1).selectOption("1");
  await pairs.nth(2).selectOption("1");
  await patient(page.getByText("The answers contradict each other.")).toHaveCount(0);
  await page.getByRole("button", { name: "Use these weights" }).click();
  await patient(saveAs(4)).toBeEnabled();
});

test("a file goes out and comes in; one that is wrong changes nothing", async () => {
  await page.goto(at("/rubrics"));
  const row = page.locator(".field", { hasText: "H-frame press (own)" });
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    row.getByRole("button", { name: "Save as file" }).click(),
  ]);
  const text = readFileSync(await download.path(), "utf8");
  const send = (name: string, body: string) =>
    page
      .locator('#main input[type="file"]')
      .setInputFiles({ name, mimeType: "text/yaml", buffer: Buffer.from(body) });
  await send("spoilt.yaml", text.replace(/- part: \S+/, "- part: unobtainium"));
  await patient(page.getByText("spoilt.yaml cannot be used. Nothing was changed.")).toBeVisible({
    timeout: 30_000,
  });
  await patient(page.getByText(/"unobtainium" is not in the price book/)).toBeVisible();
  await send("huge.yaml", `about: ${"x".repeat(2 << 20)}\n...\n`);
  await patient(page.getByText(/at most 2097152/)).toBeVisible();
  await send("mine.yaml", text.replace(`id: ${own}`, "id: own-other").replace("(own)", "(other)"));
  await page.getByRole("button", { name: "Take it as version 1" }).click();
  await patient(page.locator(".field b", { hasText: "H-frame press (other)" })).toBeVisible();
});
