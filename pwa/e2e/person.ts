/** What a person does with the app, in a person's words. */
import { expect, type Page } from "@playwright/test";

/** The first visit, until everything needed offline is kept. */
export async function visitOnce(page: Page, url: string): Promise<void> {
  await page.goto(url);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
  await expect(page.locator("html")).toHaveAttribute("data-engine", "ready", { timeout: 30_000 });
  await page.waitForFunction(async () => {
    const names = await caches.keys();
    const kept = await Promise.all(names.map(async (n) => (await (await caches.open(n)).keys()).map((r) => r.url)));
    return kept.flat().some((u) => u.includes("engine") && u.includes(".wasm"));
  });
}

/** Fills a labelled field and leaves it, as a thumb would. */
export async function fill(page: Page, label: string | RegExp, text: string): Promise<void> {
  const field = page.getByLabel(label).first();
  await field.fill(text);
  await field.blur();
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
