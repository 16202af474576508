/**
 * Before the drive, with the server stopped: an advertisement pasted or shared, what it tells taken by
 * taps, the questions for the seller copied, and the price book out as a table and in again.
 */
import { readFileSync } from "node:fs";
import { type BrowserContext, expect, type Page, test } from "@playwright/test";
import { fill, visitOnce } from "./person.ts";
import { Server } from "./server.ts";

const advertisement = [
  "2 post car lift, 9,000 lb capacity (invented)",
  "Overhead model, taken down. 230V single phase, 20 amps. Built 2009.",
  "Asking $2,400 obo, was 3,000 last year. Located in Quarry Hill, 45 miles north of town.",
  "Call 555-123-4567, model TP-9000",
].join("\n");

test.describe.configure({ mode: "serial" });

let server: Server;
let phone: BrowserContext;
let page: Page;
const faults: string[] = [];

test.beforeAll(async ({ browser }) => {
  server = await Server.start();
  phone = await browser.newContext({ permissions: ["clipboard-read", "clipboard-write"] });
  // What a phone has and this browser has not: the way to hand a text on.
  await phone.addInitScript(() => {
    navigator.share = async (data) => {
      if (sessionStorage.getItem("no-share")) throw new DOMException("left", "AbortError");
      sessionStorage.setItem("shared", data?.text ?? "");
    };
  });
  page = await phone.newPage();
  page.on("pageerror", (e) => faults.push(String(e)));
  await visitOnce(page, server.url);
});
test.afterAll(async () => {
  await phone.close();
  await server.remove();
});

const panel = () => page.locator("details", { has: page.getByLabel("Paste the listing's text") });
const value = (label: string | RegExp) => page.getByLabel(label, { exact: typeof label === "string" });

test("an advertisement is pasted with no signal, and only what is tapped is filled in", async () => {
  await server.stop();
  await page.reload();
  await page.getByRole("link", { name: "Add a listing" }).click();
  await page.getByText("From an advertisement").click();
  await fill(page, "Paste the listing's text", advertisement);
  const spoken = page.getByRole("region", { name: "The text speaks of" });
  await expect(spoken.getByRole("button")).toHaveCount(1);
  await expect(spoken.locator("mark")).toHaveText("2 post");
  await expect(page.getByText(/\d+ more things were recognised/)).toBeVisible();
  await spoken.getByRole("button", { name: /^Two-post lift/ }).click();
  await expect(page).toHaveURL(/\/listing\//);

  // The text is kept, and nothing of it is filled in.
  await expect(value("Paste the listing's text")).toHaveValue(advertisement);
  await expect(value("Asking price (USD)")).toHaveValue("");
  await expect(value("Year made")).toHaveValue("");

  const asking = page.getByRole("group", { name: "Asking price", exact: true });
  await expect(asking.locator("mark")).toHaveText(["$2,400", "3,000"]);
  await expect(asking).toContainText("doubtful");
  await asking.getByRole("button", { name: "Take it Asking price $2,400" }).click();
  await expect(asking.getByText("stands so")).toBeVisible();
  await expect(value("Asking price (USD)")).toHaveValue("2400");
  await expect(value("Year made")).toHaveValue("");

  await page.getByRole("button", { name: /^Take all \d+ that are still empty$/ }).click();
  await expect(value("Year made")).toHaveValue("2009");
  await expect(value("Place")).toHaveValue("Quarry Hill");
  await expect(value(/^Distance, one way/)).toHaveValue("45");
  await expect(value(/^Rated load/)).toHaveValue("9000");
  await expect(value("Title")).toHaveValue("2 post car lift, 9,000 lb capacity (invented)");
  await expect(page.getByRole("radio", { name: "Overhead beam" })).toBeChecked();
  await expect(page.getByRole("radio", { name: "Taken down" })).toBeChecked();
  // A telephone number and a model are no figures of it.
  const told = panel().getByRole("group");
  await expect(told.first()).toBeVisible();
  for (const none of ["Hours run", "Model", "Weight"]) {
    await expect(page.getByRole("group", { name: none, exact: true })).toHaveCount(0);
  }
  await page.reload();
  await expect(value("Asking price (USD)")).toHaveValue("2400");
  await page.getByText("Size and supply", { exact: true }).click();
  await expect(value(/^Voltage/)).toHaveValue("230");
  // What stands otherwise is shown beside what the text says, and changes only by a tap.
  await fill(page, "Year made", "2010");
  await page.getByText("The listing's text", { exact: true }).click();
  const made = page.getByRole("group", { name: "Year made", exact: true });
  await expect(made).toContainText("Now: 2010");
  await expect(page.getByText("1 to confirm")).toBeVisible();
  await expect(value("Year made")).toHaveValue("2010");
  expect(faults).toEqual([]);
});

test("the questions are copied, handed on and ticked off, with no signal", async () => {
  await page.getByRole("link", { name: /^Before the visit/ }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Before the visit" })).toBeVisible();
  const ask = page.getByRole("region", { name: "Ask the seller" });
  await ask.getByRole("button", { name: "Copy the questions" }).click();
  await expect(ask.getByText("Copied.")).toBeVisible();
  const copied = await page.evaluate(() => navigator.clipboard.readText());
  expect(copied).toContain("your listing “2 post car lift, 9,000 lb capacity (invented)”");
  expect(copied).toContain("1. ");
  // The advertisement tells the supply, so it is not asked again.
  expect(copied).not.toContain("volts, phases");
  await expect(ask.getByText("1 the listing answers")).toBeVisible();
  const open = await ask.getByRole("checkbox").count();
  expect(copied).toContain(`\n${open}. `);

  await ask.getByRole("button", { name: "Share them" }).click();
  await expect(ask.getByText("Handed on.")).toBeVisible();
  expect(await page.evaluate(() => sessionStorage.getItem("shared"))).toBe(copied);

  await ask.getByRole("checkbox").first().check();
  await fill(page, "What the seller said", "moving away, plate photo follows");
  await page.reload();
  await expect(value("What the seller said")).toHaveValue("moving away, plate photo follows");
  await ask.getByRole("button", { name: "Copy the questions" }).click();
  await expect(ask.getByText("Copied.")).toBeVisible();
  const less = await page.evaluate(() => navigator.clipboard.readText());
  expect(less).toContain(`\n${open - 1}. `);
  expect(less).not.toContain(`\n${open}. `);

  // Where the clipboard is not to be had, the text is there to be copied by hand.
  await page.evaluate(() => {
    navigator.clipboard.writeText = () => Promise.reject(new Error("no"));
  });
  await ask.getByRole("button", { name: "Copy the questions" }).click();
  await expect(ask.getByText("This browser does not let the app copy.")).toBeVisible();
  await expect(value("Message to the seller")).toBeFocused();
  const marked = await value("Message to the seller").evaluate((field: HTMLTextAreaElement) =>
    field.value.slice(field.selectionStart, field.selectionEnd),
  );
  expect(marked).toBe(less);
  expect(faults).toEqual([]);
});

test("what to bring, how long, and what stays open", async () => {
  const bring = page.getByRole("region", { name: "Bring", exact: true });
  await expect(bring.getByText("Safety boots")).toBeVisible();
  const lamp = bring.locator("details", { hasText: "lamp" }).first();
  await lamp.locator("summary").click();
  await expect(lamp).toContainText("of the safety weight");
  const time = page.getByRole("region", { name: "Time at the machine" });
  await expect(time.getByRole("row").last()).toContainText(/All of it\s*\d+ min/);
  // It was told to be taken down: that nothing can be run is certain, and said.
  const without = page.getByRole("region", { name: "What cannot be judged" });
  await expect(without.locator("details", { hasText: "Without power" })).toContainText(
    "Does the lift still stand, connected? Taken down.",
  );
  await page.emulateMedia({ media: "print" });
  await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
  await expect(lamp).toHaveAttribute("open", "");
  await expect(bring.locator("details:not([open])")).toHaveCount(0);
  await expect(page.getByRole("button", { name: "Copy the questions" })).toBeHidden();
  await page.evaluate(() => dispatchEvent(new Event("afterprint")));
  await page.emulateMedia({ media: "screen" });
  expect(faults).toEqual([]);
});

test("a listing shared from another app opens as a new one, with no signal", async () => {
  const shared = new URLSearchParams({
    title: "Shop press, 20 ton (invented)",
    text: "Hand pump, $350. https://example.com/press",
    url: "https://example.com/press",
  });
  await page.goto(`${server.url}/new?${shared}`);
  await expect(value("Paste the listing's text")).toHaveValue(
    "Shop press, 20 ton (invented)\nHand pump, $350. https://example.com/press",
  );
  const spoken = page.getByRole("region", { name: "The text speaks of" });
  await spoken.getByRole("button", { name: /^H-frame press/ }).click();
  await page.getByRole("button", { name: /^Take all/ }).click();
  await expect(value("Asking price (USD)")).toHaveValue("350");
  await expect(page.getByRole("radio", { name: "Hand pump" })).toBeChecked();
  await page.getByText("Where it was seen, your note").click();
  await expect(value("Where it was seen")).toHaveValue("https://example.com/press");

  await server.run();
  const manifest = (await (await fetch(`${server.url}/manifest.webmanifest`)).json()) as {
    share_target?: unknown;
  };
  expect(manifest.share_target).toEqual({
    action: "/new",
    method: "GET",
    params: { title: "title", text: "text", url: "url" },
  });
  expect(faults).toEqual([]);
});

test("the price book goes out as a table and comes in again, seen before it is applied", async () => {
  await page.goto(`${server.url}/prices`);
  await page.getByText("The price book as a table").click();
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save as CSV" }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^asfound-prices-\d{4}-\d\d-\d\d\.csv$/);
  const text = readFileSync(await download.path(), "utf8");
  expect(text).toContain("\ufeffid,title,unit,low,likely,high,currency,dated\r\n");
  const oil = text.split("\r\n").find((line) => line.startsWith("hydraulic-oil,")) ?? "";
  expect(oil).toMatch(/^hydraulic-oil,Hydraulic oil,gal,14\.00,19\.00,30\.00,USD,/);

  const give = (content: string) =>
    page
      .locator('input[type="file"]')
      .setInputFiles({ name: "prices.csv", mimeType: "text/csv", buffer: Buffer.from(content) });
  await give(text);
  const preview = page.getByRole("region", { name: "What it would change" });
  await expect(preview).toContainText("read, all of them. No price changes.");
  await expect(preview.getByRole("button", { name: "There is nothing to change" })).toBeDisabled();

  const changed = oil.replace("14.00,19.00,30.00", "15.50,20,31");
  await give(`${text.replace(oil, changed)}no-such-part,?,piece,1,2,3,USD,\r\nshim-set,,set,9,5,7,USD,\r\n`);
  await expect(preview.locator(".import-row")).toHaveCount(1);
  await expect(preview.locator(".import-row")).toContainText("Hydraulic oil");
  await expect(preview.locator(".import-row")).toContainText("$15.50");
  await expect(preview).toContainText('no part is called "no-such-part"');
  await expect(preview).toContainText("stands twice");
  const row = page.locator("summary", { hasText: "Hydraulic oil" }).last();
  await expect(row).toContainText("example");
  await preview.getByRole("button", { name: "Make this price your own" }).click();
  await expect(page.getByText("1 price is your own now.")).toBeVisible();
  await expect(row).toContainText("own");
  await expect(row).toContainText("$15.50");
  await page.locator(".strip-undo").click();
  await expect(row).toContainText("example");
  await give("\u0000nothing");
  await expect(page.getByRole("alert")).toBeVisible();
  expect(faults).toEqual([]);
});
