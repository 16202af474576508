/**
 * The estimate from the buyer's phone to the seller and back: paper and PDF with the server stopped, then a
 * link opened in a browser without script, an answer with a photo, and the link withdrawn.
 */
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { type BrowserContext, type Page, test, expect as unhurried } from "@playwright/test";
import type { Document, DocumentBlock } from "../src/generated/types.ts";
import { checkNow, fill, openCheck, picture, visitOnce } from "./person.ts";
import { listingId, seed } from "./seed.ts";
import { Server } from "./server.ts";

test.describe.configure({ mode: "serial" });

// The engine and the module for papers start anew with each page; how fast decides nothing here.
const expect = unhurried.configure({ timeout: 40_000 });

declare global {
  interface Window {
    /** The last document the engine made. */
    madeDocument?: Document;
  }
}

const id = listingId(1);
let server: Server;
let phone: BrowserContext;
let page: Page;
let base: string;
const faults: string[] = [];

test.beforeAll(async ({ browser }) => {
  server = await Server.start();
  base = `${server.url}/listing/${id}`;
  phone = await browser.newContext({ permissions: ["clipboard-read", "clipboard-write"] });
  await phone.addInitScript(() => {
    // What a phone has and this browser has not: the way to hand a file on.
    navigator.canShare = () => true;
    navigator.share = async (data) => {
      if (sessionStorage.getItem("no-share")) throw new DOMException("left", "AbortError");
      sessionStorage.setItem("shared", data?.files?.[0]?.name ?? data?.url ?? "");
    };
    const Right = Worker;
    globalThis.Worker = class extends Right {
      constructor(...given: ConstructorParameters<typeof Worker>) {
        super(...given);
        this.addEventListener("message", (event: MessageEvent<{ value?: Document }>) => {
          if (Array.isArray(event.data?.value?.blocks)) window.madeDocument = event.data.value;
        });
      }
    };
  });
  page = await phone.newPage();
  page.on("pageerror", (e) => faults.push(String(e)));
  await visitOnce(page, server.url);
  await seed(server.url, [{ id, file: "1-lift-walked", comparables: true }]);
  await page.goto(server.url);
  await expect(page.locator(".tag-title")).toHaveCount(1);
});
test.afterAll(async () => {
  await phone.close();
  await server.remove();
});

/** All that a document says, in reading order. */
function said(document: Document): string {
  const out: string[] = [document.title, document.date];
  const gather = (blocks: DocumentBlock[]) => {
    for (const block of blocks) {
      const { table } = block;
      if (block.word) out.push(block.word);
      if (block.text) out.push(block.text);
      for (const fact of block.facts ?? []) out.push(fact.name, fact.value);
      out.push(...(block.items ?? []));
      if (table) {
        out.push(...table.columns.map((c) => c.title));
        for (const row of table.rows) out.push(...(row.kind === "group" ? row.cells.slice(0, 1) : row.cells));
      }
      for (const photo of block.photos ?? []) out.push(photo.caption);
      gather(block.blocks ?? []);
      if (block.answer && document.answers)
        out.push(document.answers.agree, document.answers.disagree, document.answers.done);
    }
  };
  gather(document.blocks);
  out.push(document.foot);
  return out.join("").replace(/\s/g, "");
}

const file = JSON.parse(
  readFileSync(resolve(import.meta.dirname, "../../testdata/demo/1-lift-walked.json"), "utf8"),
);
/** Texts of the listing that no seller's paper holds. */
const secrets: string[] = [
  file.listing.title,
  file.listing.place,
  file.listing.seen,
  file.listing.text,
  file.listing.note,
  ...file.comparables.flatMap((c: { title: string; seen?: string }) => [c.title, c.seen ?? c.title]),
  ...Object.values<{ note?: string }>(file.findings).flatMap((f) => f.note ?? []),
];

const preview = () => page.locator(".paper");
/** The preview, once the paper and its photos are there. */
async function openPreview(): Promise<void> {
  await page.goto(`${base}/hand-over/preview`);
  await expect(preview()).toBeVisible({ timeout: 30_000 });
  await expect(page.getByRole("button", { name: "Make the PDF" })).toBeEnabled({ timeout: 30_000 });
}
const shown = async () => ((await preview().textContent()) ?? "").replace(/\s/g, "");
const fold = (title: string) => page.locator("details", { has: page.locator("summary", { hasText: title }) });

test("what goes in is chosen with no signal and kept", async () => {
  await openCheck(page, base, "pads");
  await page
    .locator('input[type="file"]')
    .first()
    .setInputFiles({ name: "pads.jpg", mimeType: "image/jpeg", buffer: await picture(page, "PADS") });
  await page.locator(".photo-grid").scrollIntoViewIfNeeded();
  await expect(page.locator("img.photo-thumb")).toHaveCount(1);
  await server.stop();
  await page.goto(base);
  await page.getByRole("link", { name: /^Hand to the seller/ }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Hand to the seller" })).toBeVisible();
  await expect(page.getByLabel("State a price (USD)")).toHaveValue("");
  await fill(page, "Your name", "N".repeat(121));
  await expect(page.getByText("121 characters are too many: at most 120.")).toBeVisible();
  await fill(page, "Your name", "Ana <script>alert(1)</script> 🔧");
  await fill(page, "The seller's name", "שמואל מומצא");
  await fill(page, "A word to the seller", "Thank you for your time.");
  await fold("Lines of the estimate").locator("summary").click();
  await fold("Lines of the estimate").getByRole("checkbox", { name: "Hoses renewed" }).uncheck();
  await page.reload();
  await expect(page.getByLabel("Your name", { exact: true })).toHaveValue("Ana <script>alert(1)</script> 🔧");
  await expect(page.getByLabel("The seller's name")).toHaveValue("שמואל מומצא");
  const lines = fold("Lines of the estimate");
  await expect(lines.locator("summary")).toContainText(/9 of 10/);
  await lines.locator("summary").click();
  await expect(lines.getByRole("checkbox", { name: "Hoses renewed" })).not.toBeChecked();
  await fill(page, "State a price (USD)", "1900");
  await expect(page.getByText("The seller will read $1,900 on the paper.")).toBeVisible();
  expect(faults).toEqual([]);
});

test("the preview is the document, all of it and nothing else", async () => {
  await openPreview();
  const made = await page.evaluate(() => window.madeDocument);
  if (!made) throw new Error("the engine made no document");
  expect(await shown()).toBe(said(made));
  const text = await shown();
  expect(text).toContain("Ana<script>alert(1)</script>🔧");
  expect(text).toContain("שמואלמומצא");
  expect(text).toContain("1,900");
  expect(text).not.toContain("Hosesrenewed");
  await expect(preview().locator("img")).toHaveCount(1);
  // The picture is a small copy, which has no data of place or device.
  expect(await preview().locator("img").getAttribute("src")).toMatch(/^blob:/);
  expect(faults).toEqual([]);
});

test("the PDF is made with no signal, saved and handed on", async () => {
  await openPreview();
  await page.getByRole("button", { name: "Make the PDF" }).click();
  await expect(page.getByText(/^The PDF is ready: /)).toBeVisible({ timeout: 60_000 });
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save it" }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^repair-estimate-\d{4}-\d\d-\d\d\.pdf$/);
  const pdf = readFileSync(await download.path());
  expect(pdf.subarray(0, 5).toString()).toBe("%PDF-");
  expect(pdf.length).toBeGreaterThan(10_000);
  expect(pdf.length).toBeLessThan(5_000_000);

  await page.getByRole("button", { name: "Share it" }).click();
  await expect(page.getByText("Handed on.")).toBeVisible();
  expect(await page.evaluate(() => sessionStorage.getItem("shared"))).toBe(download.suggestedFilename());
  await page.evaluate(() => sessionStorage.setItem("no-share", "1"));
  await page.getByRole("button", { name: "Share it" }).click();
  // Closing the share sheet is a choice: nothing is said, and the PDF is still there.
  await expect(page.getByText("Handed on.")).toHaveCount(0);
  await expect(page.getByText("It could not be handed on.")).toHaveCount(0);
  await expect(page.getByRole("button", { name: "Save it" })).toBeEnabled();
  await page.evaluate(() => sessionStorage.removeItem("no-share"));
  expect(faults).toEqual([]);
});

test("the printed page is the paper alone", async () => {
  await openPreview();
  await page.emulateMedia({ media: "print" });
  for (const name of [".strip", ".foot", ".page-actions", ".page-title", ".page-back"])
    await expect(page.locator(name)).toBeHidden();
  await expect(preview()).toBeVisible();
  await page.emulateMedia({ media: "screen" });
  expect(faults).toEqual([]);
});

test("without a server a link says plainly that it cannot be made, and the rest is there", async () => {
  await openPreview();
  await page.getByRole("button", { name: "Link", exact: true }).click();
  await page.getByRole("button", { name: "Make the link" }).click();
  await expect(page.getByRole("alert")).toContainText("The PDF and printing work without it");
  await expect(page.getByRole("button", { name: "Make the PDF" })).toBeEnabled();
  expect(faults).toEqual([]);
});

test("an estimate without lines and findings says so", async () => {
  const empty = listingId(2);
  await server.run();
  await seed(server.url, [{ id: empty, file: "3-lift-listed", findings: false }]);
  await checkNow(page);
  await page.goto(`${server.url}/listing/${empty}/hand-over`);
  await fold("Lines of the estimate").locator("summary").click();
  await expect(page.getByText("The estimate has no lines")).toBeVisible({ timeout: 30_000 });
  await page.getByRole("link", { name: "See it as the seller will" }).click();
  await expect(preview()).toBeVisible({ timeout: 30_000 });
  const made = await page.evaluate(() => window.madeDocument);
  expect(made && (await shown()) === said(made)).toBe(true);
  expect(faults).toEqual([]);
});

test("the seller opens the link without script, answers, and the buyer reads it at the finding", async ({
  browser,
}) => {
  await openPreview();
  const sent: string[] = [];
  await page.route("**/api/links", async (route) => {
    sent.push(route.request().postDataBuffer()?.toString("latin1") ?? "");
    await route.continue();
  });
  await page.getByRole("button", { name: "Link", exact: true }).click();
  await page.getByRole("button", { name: "Make the link" }).click();
  const address = page.getByRole("textbox", { name: "Address" });
  await expect(address).toHaveValue(/\/s\//);
  await expect(page.getByRole("img", { name: "The address of the link as a QR code" })).toBeVisible();
  await page.getByRole("button", { name: "Copy" }).click();
  const url = await page.evaluate(() => navigator.clipboard.readText());
  expect(url).toBe(await address.inputValue());

  const seller = await browser.newContext({ javaScriptEnabled: false });
  const theirs = await seller.newPage();
  const answer = await theirs.goto(url);
  expect(answer?.status()).toBe(200);
  await expect(theirs.getByRole("heading", { level: 1, name: "Repair estimate" })).toBeVisible();
  await expect(theirs.locator("img").first()).toBeVisible();
  // What is the buyer's alone is neither in what went to the server nor in what comes from it.
  const body = (await answer?.body())?.toString("latin1") ?? "";
  expect(sent).toHaveLength(1);
  for (const traffic of [sent[0] ?? "", body]) {
    expect(traffic).toContain("IN-20417");
    for (const secret of secrets) expect(traffic).not.toContain(secret);
  }
  const part = theirs.locator("section", {
    has: theirs.getByRole("heading", { name: "Pads", exact: true }),
  });
  await part.getByText("Already done").click();
  await part.locator("textarea").fill("New pads since Monday");
  await part.locator('input[type="file"]').setInputFiles({
    name: "new.jpg",
    mimeType: "image/jpeg",
    buffer: await picture(page, "NEW PADS"),
  });
  await part.getByRole("button", { name: "Send the answer" }).click();
  await expect(part).toContainText("Your answer was sent.");

  await checkNow(page);
  await page.goto(server.url);
  await expect(page.locator(".tag", { hasText: "1 answer from the seller" })).toBeVisible({
    timeout: 30_000,
  });
  await expect(page.locator(".tag-marks", { hasText: "1 new" })).toBeVisible();
  await page.goto(`${base}/walk/pads`);
  const says = page.locator(".seller-says");
  await expect(says).toContainText("The seller says: already done");
  await expect(says).toContainText("New pads since Monday");
  await expect(says.locator("img")).toBeVisible({ timeout: 40_000 });
  await page.goto(server.url);
  await expect(page.locator(".tag", { hasText: "1 answer from the seller" })).toBeVisible();
  await expect(page.locator(".tag-marks", { hasText: "1 new" })).toHaveCount(0);

  await page.goto(`${base}/hand-over`);
  const given = page.getByRole("region", { name: "Links given out" }).locator("details");
  await expect(given).toHaveCount(1);
  await given.locator("summary").click();
  await expect(given).toContainText("Last opened");
  await given.getByRole("button", { name: "Withdraw" }).click();
  await given.getByRole("button", { name: "Withdraw it" }).click();
  await expect(given.locator("summary")).toContainText("Withdrawn");
  const gone = await theirs.goto(url);
  expect(gone?.status()).toBe(404);
  const unknown = await theirs.request.get(`${url.slice(0, -6)}zzzzzz`);
  expect(unknown.status()).toBe(404);
  expect(await gone?.text()).toBe(await unknown.text());
  await seller.close();
  expect(faults).toEqual([]);
});

test("the language of the paper is not that of the app", async () => {
  await page.goto(`${base}/hand-over`);
  await page.locator("#main").getByLabel("Language of the paper").selectOption("es-MX");
  await openPreview();
  await expect(preview()).toHaveAttribute("lang", /^es/);
  await expect(preview().locator(".paper-title")).toHaveText(/presupuesto/i);
  await expect(page.getByRole("heading", { level: 1, name: "What the seller sees" })).toBeVisible();
  await page.goto(`${base}/hand-over`);
  await page.locator("#main").getByLabel("Language of the paper").selectOption("en-US");
  expect(faults).toEqual([]);
});

test("papers for oneself, tables and the workbook", async () => {
  for (const title of ["Appraisal record", "Job list"]) {
    await page.goto(`${base}/papers`);
    await page.getByRole("link", { name: title }).click();
    await expect(preview()).toBeVisible();
    const made = await page.evaluate(() => window.madeDocument);
    expect(made && (await shown()) === said(made)).toBe(true);
  }
  await page.getByRole("button", { name: "Make the PDF" }).click();
  await expect(page.getByText(/^The PDF is ready: /)).toBeVisible();
  await page.goto(`${base}/papers`);
  await fold("Save as CSV").locator("summary").click();
  const saved = async (name: RegExp) => {
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name }).first().click(),
    ]);
    return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
  };
  const csv = await saved(/\(CSV\)$/);
  expect(csv.name).toMatch(/^appraisal-tables-[\d-]+-[a-z_-]+\.csv$/);
  expect(csv.bytes.subarray(0, 3).toString("hex")).toBe("efbbbf");
  const workbook = await saved(/\(XLSX\)$/);
  expect(workbook.name).toMatch(/\.xlsx$/);
  expect(workbook.bytes.subarray(0, 2).toString()).toBe("PK");
  const all = await saved(/JSON$/);
  expect(JSON.parse(all.bytes.toString())).toMatchObject({ format: "asfound-appraisal" });
  await page.goto(`${server.url}/compare/paper?ids=${id},${listingId(2)}`);
  await expect(preview()).toBeVisible();
  await page.goto(`${server.url}/compare/paper?ids=${id}`);
  await expect(page.getByText("Choose two listings or more to compare.")).toBeVisible();
  expect(faults).toEqual([]);
});
