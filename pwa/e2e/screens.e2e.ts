/**
 * Every screen as it is looked at: light, dark and narrow, full and empty. Pictures of all
 * of them go to test-results/screens.
 */
import { mkdirSync } from "node:fs";
import { resolve } from "node:path";
import { type BrowserContext, expect, type Page, test } from "@playwright/test";
import { axe, measure } from "./look.ts";
import { choose, fill, openCheck, picture, visitOnce } from "./person.ts";
import { listingId, seed } from "./seed.ts";
import { Server } from "./server.ts";

const pictures = resolve(import.meta.dirname, "../test-results/screens");
/** Nobody looks at the pictures of an automatic run. */
const pictured = !process.env.CI;
const demo = listingId(1);
const untouched = listingId(2);
const long = listingId(3);
const press = listingId(4);
const longTitle = `${"Zweisäulenhebebühne🔧 مصعد سيارات مستعمل ".repeat(6)}${"W".repeat(54)} end`.slice(
  0,
  300,
);

// The later ones look at what the earlier ones put in.
// A walk over every screen takes its time on a busy machine.
test.describe.configure({ mode: "serial", timeout: 600_000 });

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

/** Opens a screen and waits until it says what it has to say. */
async function open(path: string): Promise<void> {
  await page.goto(`${server.url}${path}`);
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
  await expect(
    page
      .locator("main")
      .getByText(
        /^(Reading this phone|Working out|Reading the price|Reading the text|Opening the rubric editor|Making )/,
      ),
  ).toHaveCount(0, {
    timeout: 20_000,
  });
  if (path.startsWith("/bench/")) await expect(page.locator(".limit")).toBeVisible();
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

const settled = () =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

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
      await settled();
      const found = await measure(page);
      // Folds hold controls too.
      if (look !== dark) {
        await page.evaluate(() => {
          for (const fold of document.querySelectorAll("details")) fold.open = true;
        });
        // A drawing takes its breadth when it is seen.
        await settled();
        found.push(...(await measure(page)).filter((w) => !found.includes(w)).map((w) => `unfolded: ${w}`));
      }
      if (look !== narrow || looks.length === 1) found.push(...(await axe(page, look === dark)));
      wrong.push(...found.map((w) => `${state} ${name} ${look.name}: ${w}`));
      await page.evaluate(() => {
        for (const fold of document.querySelectorAll("details")) fold.open = false;
      });
      if (pictured)
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
  shared: `/new?${new URLSearchParams({ title: "Two-post lift (invented)", text: "9,000 lb, asking 2,400 or 3,000. 4 post lift too." })}`,
  compare: "/compare",
  decisions: "/decisions",
  "no decision": "/decisions/none",
  sheet: "/compare/paper",
  comparables: "/comparables",
  import: "/comparables/import?kind=two-post-lift",
  prices: "/prices",
  settings: "/settings",
  shop: "/shop",
  bench: "/bench",
  thread: "/bench/thread?diameter=0.37 in&tpi=16 tpi",
  rope: "/bench/rope-diameter?nominal=3/8 in&measured=0.352 in",
  mill: "/bench/mill-geometry?check=square-side&measured=0.03 mm",
  backup: "/backup",
  nowhere: "/no/such/page",
};
const ofListing = (id: string, check: string) => ({
  listing: `/listing/${id}`,
  visit: `/listing/${id}/visit`,
  walk: `/listing/${id}/walk`,
  check: `/listing/${id}/walk/${check}`,
  result: `/listing/${id}/result`,
  estimate: `/listing/${id}/estimate`,
  offer: `/listing/${id}/offer`,
  fit: `/listing/${id}/fit`,
  home: `/listing/${id}/home`,
  unite: `/listing/${id}/unite`,
  "hand-over": `/listing/${id}/hand-over`,
  preview: `/listing/${id}/hand-over/preview`,
  papers: `/listing/${id}/papers`,
  record: `/listing/${id}/papers/record`,
  jobs: `/listing/${id}/papers/jobs`,
});

test("an empty shop", async () => {
  await visitOnce(page, server.url);
  await lookAt("empty", { ...general, missing: `/listing/${listingId(99)}` }, [narrow]);
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
  // Only pictures near the screen are read.
  await page.locator(".photo-grid").scrollIntoViewIfNeeded();
  await expect(page.locator("img.photo-thumb")).toHaveCount(1);
  const photo = (await page.locator(".photo-open").first().getAttribute("href")) ?? "";
  await lookAt("photo", { photo }, [light, dark, narrow]);
  await lookAt("demo", { ...general, ...ofListing(demo, "cable-diameter") }, [light, dark, narrow]);
});

test("a shop that is told, with points that fit, need work and do not", async () => {
  await open("/shop");
  await fill(page, "Ceiling", "8");
  await fill(page, "Door, clear width", "120");
  await fill(page, "Door, clear height", "108");
  await fill(page, "Concrete, thickness", "3");
  await expect(page.locator(".strip-undo")).toContainText("Concrete, thickness");
  const { fit, home } = ofListing(demo, "cable-diameter");
  await open(fit);
  for (const [title, finding] of Object.entries({
    Ceiling: "does not fit",
    Slab: "with work",
    Door: "fits",
  })) {
    const row = page.locator("summary", { hasText: title }).first();
    await expect(row).toContainText(finding, { timeout: 20_000 });
  }
  await lookAt("told", { shop: "/shop", fit, home, estimate: `/listing/${demo}/estimate` }, [
    light,
    dark,
    narrow,
  ]);
});

test("rubrics, and one of the shop's own", async () => {
  await open("/rubrics");
  const press = page.locator(".field", { hasText: "H-frame press" });
  await press.getByRole("button", { name: "Copy to make your own" }).click();
  await expect(page.getByRole("link", { name: "Edit" })).toBeVisible();
  const own = "/rubrics/own-h-frame-press";
  await lookAt(
    "rubric",
    {
      all: "/rubrics",
      edit: own,
      check: `${own}/check/rating-plate`,
      text: `${own}/text`,
      weights: `${own}/weights`,
    },
    [light, dark, narrow],
  );
});

const table = [
  "Name;Builder;Sold price;Ask;Sold on;Built;Load;State;Remarks",
  "Invented lift, no. 1;Invented Works;1.234,50;1.900;03.02.2025;2014;9000 lb;good;with its manual",
  "Invented lift, no. 2;Other Works;2.100;2.500;11.04.2025;2016;10000 lb;worn;",
  "Invented lift, no. 3;Other Works;on request;2.500;11.04.2025;2016;10000 lb;worn;",
  "Invented lift, no. 4;;1900;2.000;13.05.2025;20115;9000 lb;as new;",
  "",
].join("\n");

async function chooseTable(name: string, text: string): Promise<void> {
  await page
    .locator('input[type="file"]')
    .setInputFiles({ name, mimeType: "text/csv", buffer: Buffer.from(text) });
}

test("a table is seen before it is kept, and twice adds nothing twice", async () => {
  await page.setViewportSize({ width: 390, height: 844 });
  await open(general.comparables);
  await page.getByRole("link", { name: "Import a table" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Import a table" })).toBeVisible();
  await page.getByLabel("Kind of equipment in it").selectOption("two-post-lift");
  await chooseTable("lifts.csv", table);
  const rows = page.locator(".import-row");
  await expect(rows).toHaveCount(3);
  await expect(page.getByText("3 of 4 rows read. 1 row is left out")).toBeVisible();
  await expect(rows.first()).toContainText("$1,234.50");
  await expect(rows.first()).toContainText("paid 2025-02-03 · Invented Works · made 2014 · 9000 lb · Sound");
  await expect(page.getByText("Line 4, Sold price:")).toBeVisible();
  await expect(page.getByText("Semicolons part the cells.")).toBeVisible();
  await page.getByText("Columns", { exact: true }).click();
  // The other price in its place: the column it had is free, and all is read again.
  await page.getByLabel("Price", { exact: true }).selectOption("Ask");
  await expect(rows).toHaveCount(4);
  await expect(rows.first()).toContainText("$1,900");
  await expect(page.getByText("Not taken: Sold price.")).toBeVisible();
  await choose(page, "The point starts the decimals");
  await expect(page.getByText("0 of 4 rows read.")).toBeVisible();
  await expect(page.getByRole("button", { name: "There is nothing to add" })).toBeDisabled();
  await choose(page, "The comma starts the decimals");
  await expect(rows).toHaveCount(4);
  await page.getByLabel("Price", { exact: true }).selectOption("Sold price");
  await expect(rows).toHaveCount(3);
  const wrong: string[] = [];
  for (const look of [light, dark, narrow]) {
    await page.setViewportSize({ width: look.width, height: 844 });
    await page.emulateMedia({ colorScheme: look.dark ? "dark" : "light", reducedMotion: "reduce" });
    wrong.push(...(await measure(page)).map((w) => `${look.name}: ${w}`));
    if (look !== narrow) wrong.push(...(await axe(page, look.dark)));
    const path = resolve(pictures, `table-import-${look.name}.jpg`);
    await page.screenshot({ path, type: "jpeg", quality: 60, scale: "css", fullPage: true });
  }
  expect(wrong).toEqual([]);
  await page.getByRole("button", { name: "Add 3 comparables" }).click();
  await expect(page.getByText("3 comparables added.")).toBeVisible();
  await page.getByRole("link", { name: "See them" }).click();
  await expect(page.locator("summary", { hasText: "Invented lift, no. 2" })).toContainText("$2,100");
  await open(general.import);
  await chooseTable("lifts.csv", table);
  await expect(page.getByText("All 3 are there already: nothing to add.")).toBeVisible();
  await expect(page.getByRole("button", { name: "There is nothing to add" })).toBeDisabled();
  await page.getByText("Or paste it here").click();
  await fill(page, "The table", "title\tprice (EUR)\nInvented lift, no. 5\t2,400\n");
  await page.getByRole("button", { name: "Read what was pasted" }).click();
  await expect(rows).toHaveCount(1);
  await expect(page.getByText("Tabs part the cells.")).toBeVisible();
  await expect(page.getByText("The prices are in EUR, and you count in USD.")).toBeVisible();
  await page.getByRole("button", { name: "Add 1 comparable", exact: true }).click();
  await expect(page.getByText("1 comparable added.")).toBeVisible();
  await chooseTable("photo.csv", "\u0000\u0001\u0002");
  await expect(page.getByRole("alert")).toBeVisible();
  await expect(rows).toHaveCount(0);
  expect(faults).toEqual([]);
});

test("two thousand rows are listed by fifties and taken back at once", async () => {
  await page.setViewportSize({ width: 390, height: 844 });
  await open(general.import);
  const lines = Array.from({ length: 2000 }, (_, i) => `Invented lift ${i},${1000 + i},2024-03-1${i % 10}`);
  await chooseTable("many.csv", ["title,sold price,date", ...lines].join("\n"));
  await page.getByRole("button", { name: "Add 2000 comparables" }).click();
  await expect(page.getByText("2000 comparables added.")).toBeVisible({ timeout: 60_000 });
  await page.getByRole("link", { name: "See them" }).click();
  const listed = page.locator("summary", { hasText: "Invented lift" });
  await expect(page.getByRole("button", { name: "Show 50 more" })).toBeVisible();
  const kind = page.locator("section", {
    has: page.getByRole("heading", { name: "Two-post lift", exact: true }),
  });
  await expect(kind.locator("summary")).toHaveCount(50);
  await page.getByRole("button", { name: "Show 50 more" }).click();
  await expect(kind.locator("summary")).toHaveCount(100);
  await fill(page, "Find", "lift 1999");
  await expect(listed).toHaveCount(1);
  await fill(page, "Find", "");
  await page.locator(".strip-undo").click();
  await expect(page.getByText("Undone: 2000 comparables imported.")).toBeAttached({ timeout: 60_000 });
  await expect(page.getByRole("button", { name: "Show 50 more" })).toHaveCount(0);
  expect(faults).toEqual([]);
});

test("what a comparable and a new price say can be followed, doubted and changed", async () => {
  await page.setViewportSize({ width: 390, height: 844 });
  await open(`/listing/${demo}/offer`);
  const sales = page.getByRole("region", { name: "By what others went for" });
  const rate = sales.locator("label.rate", { hasText: "Condition" });
  const rates = sales.locator("summary", { hasText: "How comparables are adjusted" });
  await rates.click();
  await expect(rate.locator("input")).toBeChecked();
  await rate.click();
  await expect(rate.locator("input")).not.toBeChecked();
  await page.reload();
  await rates.click();
  await expect(rate.locator("input")).not.toBeChecked();
  const cost = page.getByRole("region", { name: "By the price of a new one" });
  await cost.getByText("What it rests on").click();
  await cost.getByText("Worth lost by more than age").click();
  const before = await cost.locator(".big-figure").textContent();
  await fill(page, "Functional: by its design (%)", "96");
  await expect(cost.getByText("“96” is too large: at most 95.")).toBeVisible();
  await fill(page, "Functional: by its design (%)", "20");
  await expect(cost.locator(".big-figure")).not.toHaveText(before ?? "");
  await fill(page, "Why", "no second height");
  await fill(page, "Output it is rated for", "30");
  await fill(page, "Output that is asked of it", "40");
  await expect(cost.getByText("It cannot be asked for more than its rated 30.")).toBeVisible();
  await fill(page, "Output that is asked of it", "12");
  await expect(cost.getByText("cannot be asked for more")).toHaveCount(0);
  await cost.getByText("That price is an old one").click();
  await fill(page, "It stood then at", "101.5");
  await expect(cost.getByText("The index counts once both figures are there.")).toBeVisible();
  await fill(page, "It stands now at", "142");
  await expect(cost.locator("summary", { hasText: "That price is an old one" })).toContainText("101.5 → 142");
  await expect(cost.locator(".steps")).toContainText("index");
  await page.reload();
  await cost.getByText("What it rests on").click();
  await cost.getByText("Worth lost by more than age").click();
  await expect(page.getByLabel("Why")).toHaveValue("no second height");
  await expect(page.getByLabel("Output it is rated for")).toHaveValue("30");
  await sales.locator("summary", { hasText: "Comparables that count" }).click();
  await sales.locator(".worth-rows summary").first().click();
  await sales.getByRole("link", { name: "Change this comparable" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Comparables" })).toBeVisible();
  await expect(page.getByLabel("Hours run")).toBeVisible();
  await open(`/listing/${demo}/offer`);
  await lookAt("worth", { offer: `/listing/${demo}/offer` }, [light, dark, narrow]);
});

test("a press, a listing with nothing graded, and a very long title", async () => {
  await lookAt(
    "press",
    { check: `/listing/${press}/walk/frame-square`, result: `/listing/${press}/result` },
    [light],
  );
  const { record, jobs, ...bare } = ofListing(untouched, "oil");
  await lookAt("untouched", bare, [light]);
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
  await lookAt("decide", { form: of(demo, long, press).replace("?", "/decide?") }, [
    light,
    dark,
    narrow,
    desk,
  ]);
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
