/** What a person does with the app, in a person's words. */
import { expect, type Locator, type Page } from "@playwright/test";

/** The first visit, until everything needed offline is kept. */
export async function visitOnce(page: Page, url: string): Promise<void> {
  await page.goto(url);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
  await expect(page.locator("html")).toHaveAttribute("data-engine", "ready", { timeout: 30_000 });
  await page.waitForFunction(async () => {
    const names = await caches.keys();
    const kept = await Promise.all(
      names.map(async (n) => (await (await caches.open(n)).keys()).map((r) => r.url)),
    );
    return kept.flat().some((u) => u.includes("engine") && u.includes(".wasm"));
  });
}

/** Fills a labelled field and leaves it, as a thumb would. */
export async function fill(page: Page, label: string | RegExp, text: string): Promise<void> {
  // The undo button carries the names of fields too.
  const field = page.locator("#main").getByLabel(label).first();
  await field.fill(text);
  await field.blur();
}

/** Taps one of several answers, on its words as a thumb would, and sees it taken. */
export async function choose(page: Page, words: string | RegExp): Promise<void> {
  const answer = page.locator("#main label.choice-item", { hasText: words }).first();
  await answer.click();
  await expect(answer.locator("input")).toBeChecked();
}

/** A real JPEG, drawn in the page itself. */
export async function picture(page: Page, text: string): Promise<Buffer> {
  const base64 = await page.evaluate(async (words) => {
    const canvas = new OffscreenCanvas(1200, 900);
    const ink = canvas.getContext("2d");
    if (!ink) throw new Error("no canvas");
    ink.fillStyle = "#d8cfb4";
    ink.fillRect(0, 0, 1200, 900);
    ink.fillStyle = "#203040";
    ink.font = "80px sans-serif";
    ink.fillText(words, 80, 400);
    const blob = await canvas.convertToBlob({ type: "image/jpeg", quality: 0.8 });
    let out = "";
    for (const byte of new Uint8Array(await blob.arrayBuffer())) out += String.fromCharCode(byte);
    return btoa(out);
  }, text);
  return Buffer.from(base64, "base64");
}

/** Opens one check, reading the cautions first where they were not read on this device. */
export async function openCheck(page: Page, listing: string, check: string): Promise<void> {
  await page.goto(`${listing}/walk/${check}`);
  const read = page.getByRole("button", { name: "I have read these" });
  await expect(read.or(page.locator(".grade").first())).toBeVisible({ timeout: 30_000 });
  if (await read.isVisible()) await read.click();
  await expect(page.locator(".grade").first()).toBeVisible();
}

/** The button of one grade. */
export const gradeButton = (page: Page, n: number): Locator =>
  page.locator(`.grade[aria-keyshortcuts="${n}"]`);

/** Grades the check on the screen and sees it kept. */
export async function grade(page: Page, n: number): Promise<void> {
  await gradeButton(page, n).click();
  await expect(gradeButton(page, n)).toHaveAttribute("aria-pressed", "true");
}

/** What the badge says of what is saved where. */
export const badge = (page: Page): Locator => page.locator(".strip-sync");

/** Asks the server now instead of waiting for the next try. */
export async function checkNow(page: Page): Promise<void> {
  const ask = page.getByRole("button", { name: "Check now" });
  if (!(await ask.isVisible())) await badge(page).click();
  await expect(ask).toBeEnabled({ timeout: 40_000 });
  await ask.click();
  await expect(ask).toBeEnabled({ timeout: 40_000 });
  await page.locator("#sync-sheet").getByRole("button", { name: "Close" }).click();
}

/** Makes the clock of this device wrong by some ms, from the next load of a page on. */
export async function shiftClock(page: Page, ms: number): Promise<void> {
  await page.addInitScript((shift) => {
    const Right = Date;
    globalThis.Date = class extends Right {
      constructor(...given: unknown[]) {
        if (given.length === 0) super(Right.now() + shift);
        else super(...(given as [number]));
      }
      static override now(): number {
        return Right.now() + shift;
      }
    } as DateConstructor;
  }, ms);
}
