/**
 * Every screen as it is looked at: light, dark and narrow, full and empty. Pictures of all
 * of them go to test-results/screens.
 */
import { mkdirSync } from "node:fs";
import { resolve } from "node:path";
import AxeBuilder from "@axe-core/playwright";
import { type BrowserContext, expect, type Page, test } from "@playwright/test";
import { openCheck, picture, visitOnce } from "./person.ts";
import { listingId, seed } from "./seed.ts";
import { Server } from "./server.ts";

const pictures = resolve(import.meta.dirname, "../test-results/screens");
const demo = listingId(1);
const untouched = listingId(2);
const long = listingId(3);
const press = listingId(4);
const longTitle = `${"Zweisäulenhebebühne🔧 مصعد سيارات مستعمل ".repeat(6)}${"W".repeat(54)} end`.slice(
  0,
  300,
);

// The later ones look at what the earlier ones put in.
test.describe.configure({ mode: "serial" });

let server: Server;
let context: BrowserContext;
let page: Page;
const faults: string[] = [];

test.beforeAll(async ({ browser }) => {
  mkdirSync(pictures, { recursive: true });
  server = await Server.start();
  context = await browser.newContext();
  page = await context.newPage();
  page.on("pageerror", (e) => faults.push(`${page.url()}: ${e}`));
  page.on("console", (m) => {
    // Without a server every exchange fails, and the browser logs it.
    if (m.type() === "error" && !m.text().includes("Failed to load resource"))
      faults.push(`${page.url()}: ${m.text()}`);
  });
});
test.afterAll(async () => {
  await context.close();
  await server.remove();
});

/** What is wrong with the screen as it stands: too wide, or a control too small for a thumb. */
function measure(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const wrong: string[] = [];
    const root = document.documentElement;
    if (root.scrollWidth > root.clientWidth) {
      const widest = [...document.querySelectorAll("body *")]
        .filter((n) => n.getBoundingClientRect().right > root.clientWidth + 0.5)
        .slice(0, 3)
        .map((n) => `${n.tagName}.${n.getAttribute("class") ?? ""}`);
      wrong.push(`scrolls sideways: ${root.scrollWidth} > ${root.clientWidth} by ${widest.join(", ")}`);
    }
    for (const node of document.querySelectorAll<HTMLElement>(
      "button *, a *, label *, h1, h2, h3, p, dt, dd, td, th",
    )) {
      const { overflowX, textOverflow, display } = getComputedStyle(node);
      if (
        overflowX === "visible" ||
        textOverflow === "ellipsis" ||
        display === "inline" ||
        node.clientWidth < 2
      )
        continue;
      if (node.scrollWidth > node.clientWidth + 1) {
        wrong.push(`${node.tagName}.${node.className} "${node.textContent?.slice(0, 40)}" is cut off`);
      }
    }
    for (const node of document.querySelectorAll<HTMLElement>("button, a[href], summary")) {
      if (getComputedStyle(node).display === "inline" || node.clientWidth < 2) continue;
      if (node.scrollWidth > node.clientWidth + 1) {
        wrong.push(
          `${node.tagName}.${node.className} "${node.textContent?.slice(0, 40)}" holds more than it shows`,
        );
      }
    }
    const controls = "button, a[href], input, select, textarea, summary, [role=button], [role=slider]";
    for (const node of document.querySelectorAll<HTMLElement>(controls)) {
      if (!node.checkVisibility({ opacityProperty: false, visibilityProperty: true })) continue;
      if (node.classList.contains("skip")) continue;
      // A link within a sentence is as high as its line.
      const sentence = node.matches("a") && node.closest("p, li, dd, td, caption");
      if (sentence && getComputedStyle(node).display === "inline") continue;
      const boxes = [node, ...((node as HTMLInputElement).labels ?? [])].map((n) =>
        n.getBoundingClientRect(),
      );
      if (!boxes.some((b) => b.width >= 47.5 && b.height >= 47.5)) {
        const [box] = boxes;
        const words = (node.getAttribute("aria-label") ?? node.textContent ?? "").trim().slice(0, 40);
        wrong.push(
          `${node.tagName}.${node.className} "${words}" is ${Math.round(box?.width ?? 0)}x${Math.round(box?.height ?? 0)}`,
        );
      }
    }
    return [...new Set(wrong)];
  });
}

/** All rules on the light screen; the dark one differs by its colours alone. */
async function axe(page: Page, colours: boolean): Promise<string[]> {
  const builder = new AxeBuilder({ page });
  const { violations } = await (colours ? builder.withRules("color-contrast") : builder).analyze();
  return violations.flatMap((v) =>
    v.nodes.slice(0, 3).map((n) => `${v.id}: ${n.target.join(" ")} ${n.failureSummary}`),
  );
}

/** Opens a screen and waits until it says what it has to say. */
async function open(path: string): Promise<void> {
  await page.goto(`${server.url}${path}`);
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
  await expect(
    page.locator("main").getByText(/^(Reading this phone|Working out|Reading the price)/),
  ).toHaveCount(0, {
    timeout: 20_000,
  });
}

interface Look {
  name: string;
  width: number;
  dark: boolean;
}
const light: Look = { name: "light", width: 390, dark: false };
const dark: Look = { name: "dark", width: 390, dark: true };
const narrow: Look = { name: "narrow", width: 320, dark: false };
const desk: Look = { name: "desk", width: 1280, dark: false };

/** Looks at each screen in each way and gathers all that is wrong. */
async function lookAt(state: string, paths: Record<string, string>, looks: Look[]): Promise<void> {
  const wrong: string[] = [];
  for (const [name, path] of Object.entries(paths)) {
    await open(path);
    await expect(page.getByRole("heading", { name: "Not on this phone" })).toHaveCount(
      name === "missing" ? 1 : 0,
    );
    for (const look of looks) {
      await page.setViewportSize({ width: look.width, height: 844 });
      await page.emulateMedia({ colorScheme: look.dark ? "dark" : "light", reducedMotion: "reduce" });
      await page.evaluate(
        () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
      );
      const found = await measure(page);
      // Folds hold controls too.
      if (look !== dark) {
        await page.evaluate(() => {
          for (const fold of document.querySelectorAll("details")) fold.open = true;
        });
        found.push(...(await measure(page)).filter((w) => !found.includes(w)).map((w) => `unfolded: ${w}`));
      }
      if (look !== narrow) found.push(...(await axe(page, look === dark)));
      wrong.push(...found.map((w) => `${state} ${name} ${look.name}: ${w}`));
      await page.evaluate(() => {
        for (const fold of document.querySelectorAll("details")) fold.open = false;
      });
      await page.screenshot({
        path: resolve(pictures, `${state}-${name}-${look.name}.jpg`),
        type: "jpeg",
        quality: 60,
        scale: "css",
        fullPage: true,
      });
    }
  }
  expect(wrong).toEqual([]);
  expect(faults).toEqual([]);
}

const general = {
  listings: "/",
  new: "/new",
  compare: "/compare",
  comparables: "/comparables",
  prices: "/prices",
  settings: "/settings",
  backup: "/backup",
  nowhere: "/no/such/page",
};
const ofListing = (id: string, check: string) => ({
  listing: `/listing/${id}`,
  walk: `/listing/${id}/walk`,
  check: `/listing/${id}/walk/${check}`,
  result: `/listing/${id}/result`,
  estimate: `/listing/${id}/estimate`,
  offer: `/listing/${id}/offer`,
});

test("an empty shop", async () => {
  await visitOnce(page, server.url);
  await lookAt("empty", { ...general, missing: `/listing/${listingId(99)}` }, [light, narrow]);
});

test("a shop with listings", async () => {
  await seed(server.url, [
    { id: demo, file: "1-lift-walked", comparables: true },
    { id: press, file: "4-press", comparables: true },
    { id: untouched, file: "3-lift-listed", findings: false },
    { id: long, file: "2-lift-half", listing: { title: longTitle, place: longTitle, maker: longTitle } },
  ]);
  await open("/");
  await page.reload();
  await expect(page.locator(".tag-title")).toHaveCount(4, { timeout: 30_000 });
  // The cautions of each are read once; a check shows them instead of itself before that.
  await openCheck(page, `${server.url}/listing/${untouched}`, "oil");
  await openCheck(page, `${server.url}/listing/${long}`, "hoses");
  await openCheck(page, `${server.url}/listing/${demo}`, "cable-diameter");
  await page
    .locator('input[type="file"]')
    .first()
    .setInputFiles({
      name: "cable.jpg",
      mimeType: "image/jpeg",
      buffer: await picture(page, "CABLE 0.352"),
    });
  await expect(page.locator("img.photo-thumb")).toHaveCount(1);
  await lookAt("demo", { ...general, ...ofListing(demo, "cable-diameter") }, [light, dark, narrow]);
});

test("a press, a listing with nothing graded, and a very long title", async () => {
  await lookAt(
    "press",
    { check: `/listing/${press}/walk/frame-square`, result: `/listing/${press}/result` },
    [light],
  );
  await lookAt("untouched", ofListing(untouched, "oil"), [light]);
  await lookAt("long", { listings: "/", ...ofListing(long, "hoses") }, [narrow]);
  await lookAt("long", { listings: "/", listing: `/listing/${long}` }, [light]);
});

test("listings side by side: all of them, a pair, and one alone", async () => {
  const of = (...ids: string[]) => `/compare?of=${ids.join(",")}`;
  await lookAt("side", { all: of(demo, long, untouched, press), pair: of(demo, untouched) }, [
    light,
    dark,
    narrow,
    desk,
  ]);
  await lookAt("side", { one: of(demo) }, [light]);
});

test("every figure opened onto where it comes from", async () => {
  for (const path of [`/listing/${demo}/result`, `/listing/${demo}/offer`]) {
    await open(path);
    const asks = page.locator('.why-ask[aria-expanded="false"]:visible');
    for (let i = 0; i < 12 && (await asks.count()) > 0; i++) await asks.first().click();
    await page.setViewportSize({ width: narrow.width, height: 844 });
    expect(await measure(page)).toEqual([]);
    expect(await axe(page, false)).toEqual([]);
  }
  expect(faults).toEqual([]);
});

test("every screen opens with the server stopped", async () => {
  await server.stop();
  for (const path of Object.values({ ...general, ...ofListing(demo, "cable-diameter") })) {
    await open(path);
    const wanted = path === "/no/such/page" ? /No such page/ : /.+/;
    await expect(page.getByRole("heading", { level: 1 })).toHaveText(wanted);
    await expect(page.getByText("This screen failed")).toHaveCount(0);
  }
  await open(`/listing/${demo}/offer`);
  await expect(page.locator(".price-figure")).toHaveCount(3);
  expect(faults).toEqual([]);
});
