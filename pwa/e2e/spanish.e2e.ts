/** The app in another language: chosen once, there after a start without a server, and no English left on a screen. */
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { expect, type Page, test } from "@playwright/test";
import { pairs } from "../src/words/es/index.ts";
import { visitOnce } from "./person.ts";
import { listingId, seed } from "./seed.ts";
import { Server } from "./server.ts";

const demo = listingId(1);
const generated = resolve(import.meta.dirname, "../src/generated");

let server: Server;
test.beforeAll(async () => {
  server = await Server.start();
});
test.afterAll(() => server.remove());

/** Every text in a value, at any depth. */
function texts(value: unknown, out = new Set<string>()): Set<string> {
  if (typeof value === "string") out.add(value.trim());
  else if (typeof value === "object" && value !== null)
    for (const one of Object.values(value)) texts(one, out);
  return out;
}

/** English texts of two words or more that are none of the Spanish ones too. */
function onlyEnglish(): Set<string> {
  const read = (name: string) => texts(JSON.parse(readFileSync(resolve(generated, name), "utf8")));
  const english = new Set([...texts(pairs.map(([words]) => words)), ...read("catalogue.json")]);
  const spanish = new Set([...texts(pairs.map(([, words]) => words)), ...read("catalogue.es.json")]);
  return new Set([...english].filter((text) => /\p{L}{2,} \p{L}{2,}/u.test(text) && !spanish.has(text)));
}

/** What stands on the screen, text by text. */
const shown = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const out: string[] = [];
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walk.nextNode()) out.push(walk.currentNode.textContent?.trim() ?? "");
    return out.filter((text) => text !== "");
  });

test("a device speaks Spanish from the next start on, with the server stopped", async ({ page }) => {
  test.setTimeout(300_000);
  await seed(server.url, [{ id: demo, file: "1-lift-walked", comparables: true }]);
  await visitOnce(page, server.url);
  await expect(page.locator(".tag-title")).toHaveCount(1, { timeout: 30_000 });
  await page.goto(`${server.url}/settings`);
  await page.getByLabel("Language of this device").selectOption("es-MX");
  await expect(page.getByRole("heading", { level: 1, name: "Ajustes" })).toBeVisible();
  await expect(page.locator("html")).toHaveAttribute("lang", "es");
  await server.stop();
  const english = onlyEnglish();
  expect(english.size).toBeGreaterThan(5_000);
  const listing = `/listing/${demo}`;
  const left: string[] = [];
  for (const path of [
    "/",
    "/new",
    "/settings",
    "/prices",
    "/comparables",
    "/bench/rope-diameter?nominal=3/8 in&measured=0.352 in",
    listing,
    `${listing}/visit`,
    `${listing}/walk`,
    `${listing}/result`,
    `${listing}/estimate`,
    `${listing}/offer`,
    `${listing}/fit`,
    `${listing}/home`,
    `${listing}/hand-over`,
    `${listing}/hand-over/preview`,
  ]) {
    await page.goto(`${server.url}${path}`);
    await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
    // The engine's sentences come a moment after the screen.
    await expect(page.locator("main").getByText(/^(Calculando|Leyendo)/)).toHaveCount(0, { timeout: 30_000 });
    left.push(...(await shown(page)).filter((text) => english.has(text)).map((text) => `${path}: ${text}`));
  }
  // What a person typed stays as it was typed.
  expect(left.filter((text) => !/Two-post|invented/i.test(text))).toEqual([]);
});
