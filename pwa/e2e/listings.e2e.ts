/** The list as a tool: found, put in order, put away, copied, put together; with the server stopped. */
import AxeBuilder from "@axe-core/playwright";
import { type BrowserContext, expect, type Page, test } from "@playwright/test";
import { choose, fill, visitOnce } from "./person.ts";
import { valueAt } from "./replica.ts";
import { listingId, type Seed, seed } from "./seed.ts";
import { Server } from "./server.ts";

test.describe.configure({ mode: "serial", timeout: 300_000 });

const lift = "1-lift-walked";
const open = "3-lift-listed";
const long = `${"Zweisäulenhebebühne 🔧 مصعد ".repeat(12)}`.slice(0, 300);
const seeds: Seed[] = [
  {
    id: listingId(1),
    file: lift,
    listing: { title: "Grey lift", place: "Río Seco", asking: 250_000, serial: "AB-123.4" },
  },
  {
    id: listingId(2),
    file: open,
    listing: {
      title: "Gray lift twice",
      place: "rio seco",
      asking: 180_000,
      distance: { n: 90, unit: "km" },
    },
  },
  {
    id: listingId(3),
    file: open,
    listing: {
      title: "مصعد سيارات مستعمل",
      place: "Mill Lane",
      asking: 90_000,
      distance: { n: 60, unit: "mi" },
    },
  },
  {
    id: listingId(4),
    file: "4-press",
    listing: { title: "<script>document.title='no'</script>", place: "Mill Lane", asking: 40_000 },
  },
  { id: listingId(5), file: open, listing: { title: long, place: "Mill Lane", asking: 60_000 } },
  { id: listingId(6), file: open, listing: { title: "Élévateur 10", place: "Mill Lane", asking: 70_000 } },
  { id: listingId(7), file: open, listing: { title: "Élévateur 9", place: "Mill Lane", asking: 80_000 } },
];

let server: Server;
let context: BrowserContext;
let page: Page;
const faults: string[] = [];

test.beforeAll(async ({ browser }) => {
  server = await Server.start();
  context = await browser.newContext();
  page = await context.newPage();
  page.on("pageerror", (e) => faults.push(`${page.url()}: ${e}`));
});
test.afterAll(async () => {
  await context.close();
  await server.remove();
});

const cards = () => page.locator("#main > ul.tags > li");
const titles = async () => (await cards().locator(".tag-title").allTextContents()).map((t) => t.trim());
const search = () => page.locator(".finder input");
const pick = (label: string) => page.locator(".finder").getByLabel(label);
/** Rules of accessibility broken by what stands on the screen now. */
const broken = async () =>
  (await new AxeBuilder({ page }).analyze()).violations.flatMap((v) =>
    v.nodes.map((n) => `${v.id}: ${n.target.join(" ")}`),
  );
const wide = () =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
const undo = () => page.locator(".strip-undo").click();

test("a short list has no search in its way", async () => {
  await seed(server.url, seeds.slice(0, 2));
  await visitOnce(page, server.url);
  await expect(cards()).toHaveCount(2);
  await expect(page.getByRole("button", { name: "Find" })).toHaveCount(0);
  await seed(server.url, seeds.slice(2));
  await page.reload();
  await expect(cards()).toHaveCount(7, { timeout: 30_000 });
  await server.stop();
  await page.reload();
  await expect(cards()).toHaveCount(7);
  // The verdict comes by itself for what is on the screen.
  await expect(page.locator("li .tag-standing .hazard").first()).toBeVisible({ timeout: 30_000 });
});

test("a search finds whatever the accents, stands in the address, and the way back leads to it", async () => {
  await page.getByRole("button", { name: "Find" }).click();
  await search().fill("ELEVATEUR");
  await expect(cards()).toHaveCount(2);
  await expect(page).toHaveURL(/\?q=ELEVATEUR$/);
  await search().fill("ab1234");
  await expect.poll(titles).toEqual(["Grey lift"]);
  await expect(page.locator(".list-sum")).toContainText("1 of 7 listings");
  await cards().first().locator("a").click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Grey lift");
  await page.goBack();
  await expect.poll(titles).toEqual(["Grey lift"]);
  await cards().first().locator("a").click();
  await page.locator(".page-back").click();
  await expect(page).toHaveURL(/\?q=ab1234$/);
  await expect.poll(titles).toEqual(["Grey lift"]);
  await page.getByRole("button", { name: "Find" }).click();
  await search().fill("<script>");
  await expect.poll(titles).toEqual(["<script>document.title='no'</script>"]);
  await expect(page).toHaveTitle(/Listings/);
  await search().fill("nothing like it");
  await expect(page.getByRole("heading", { name: "Nothing matches" })).toBeVisible();
  await page.getByRole("button", { name: "Show all" }).click();
  await expect(cards()).toHaveCount(7);
  await expect(page).toHaveURL(new RegExp(`${server.port}/$`));
});

test("filters and orders; each is a step that the way back undoes", async () => {
  await pick("Place").selectOption({ label: "Río Seco (2)" });
  await expect(cards()).toHaveCount(2);
  await page.goBack();
  await expect(cards()).toHaveCount(7);
  await pick("Order").selectOption("asking");
  await expect.poll(async () => (await titles())[0]).toBe("<script>document.title='no'</script>");
  await pick("Order").selectOption("name");
  await pick("Kind").selectOption({ label: "Two-post lift (6)" });
  await expect.poll(async () => (await titles()).slice(0, 2)).toEqual(["Élévateur 9", "Élévateur 10"]);
  await pick("Order").selectOption("distance");
  await page.reload();
  // 90 km are less than 60 miles.
  await expect
    .poll(async () => (await titles()).filter((t) => /Gray lift twice|^مصعد/.test(t)))
    .toEqual(["Gray lift twice", "مصعد سيارات مستعمل"]);
  await page.getByRole("button", { name: "Find" }).click();
  await pick("Where it stands").selectOption({ label: "Looked at (1)" });
  await expect.poll(titles).toEqual(["Grey lift"]);
  await page.getByRole("button", { name: "Show all" }).click();
});

test("several are put away at once, found there, and brought back; one undo does it too", async () => {
  await page.goto(server.url);
  await page.getByRole("button", { name: "Find" }).click();
  await search().fill("elevateur");
  await page.getByRole("button", { name: "Choose several" }).click();
  await page.getByRole("button", { name: "Choose all 2" }).click();
  await page.getByRole("button", { name: "Put away (2)" }).click();
  await expect(page.getByRole("heading", { name: "Nothing matches" })).toBeVisible();
  await page.getByRole("button", { name: "Put away (2)" }).click();
  await expect(page).toHaveURL(/state=away/);
  await expect(cards()).toHaveCount(2);
  await undo();
  await expect(cards()).toHaveCount(0);
  await page.getByRole("button", { name: "Show all" }).click();
  await expect(cards()).toHaveCount(7);

  await page.getByRole("button", { name: "Find" }).click();
  await page.getByRole("button", { name: "Choose several" }).click();
  await page.getByRole("button", { name: "Choose all 7" }).click();
  await page.getByRole("button", { name: "Put away (7)" }).click();
  await expect(page.getByRole("heading", { name: "All listings are put away" })).toBeVisible();
  await page.getByRole("button", { name: "Put away (7)" }).click();
  await page.getByRole("button", { name: "Find" }).click();
  await page.getByRole("button", { name: "Choose several" }).click();
  await page.getByRole("button", { name: "Choose all 7" }).click();
  await page.getByRole("button", { name: "Bring back (7)" }).click();
  await page.goto(server.url);
  await expect(cards()).toHaveCount(7);
});

test("search, choice and the record's own actions are within everybody's reach", async () => {
  await page.goto(server.url);
  for (const width of [390, 320, 1280]) {
    await page.setViewportSize({ width, height: 844 });
    await page.getByRole("button", { name: "Find" }).click();
    expect(await wide(), `sheet at ${width}`).toBe(0);
    if (width === 390) expect(await broken()).toEqual([]);
    await page.getByRole("button", { name: "Choose several" }).click();
    await page.locator("label.tag").first().click();
    expect(await wide(), `choice at ${width}`).toBe(0);
    if (width === 390) expect(await broken()).toEqual([]);
    await page.getByRole("button", { name: "Done" }).click();
  }
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(`${server.url}/listing/${listingId(1)}/unite?with=${listingId(2)}`);
  await expect(page.getByRole("radio").first()).toBeVisible();
  expect(await broken()).toEqual([]);
  await page.goto(`${server.url}/listing/${listingId(5)}`);
  await page.locator("summary", { hasText: "Where it stands" }).click();
  expect(await wide()).toBe(0);
  expect(await broken()).toEqual([]);
});

test("where a listing stands is said in words, and the walkaround tells the rest", async () => {
  await page.goto(`${server.url}/listing/${listingId(1)}`);
  await page.locator("summary", { hasText: "Where it stands" }).click();
  await choose(page, "Offer made");
  await page.goto(server.url);
  await expect(cards().filter({ hasText: "Grey lift" })).toContainText("Offer made");
  await undo();
  await expect(cards().filter({ hasText: "Offer made" })).toHaveCount(0);
});

test("a copy has the facts and neither findings nor price, and undo removes it", async () => {
  await page.goto(`${server.url}/listing/${listingId(1)}`);
  await page.locator("summary", { hasText: "Where it stands" }).click();
  await page.getByRole("button", { name: "Copy for a second one like it" }).click();
  await expect(page).not.toHaveURL(new RegExp(listingId(1)));
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Grey lift");
  const copy = `listing:${page.url().split("/").at(-1)}`;
  expect(await valueAt(page, copy, "title")).toBe("Grey lift");
  expect(await valueAt(page, copy, "asking")).toBeUndefined();
  expect(await valueAt(page, copy, "serial")).toBeUndefined();
  await fill(page, "Asking price", "900");
  // What a closing page could not store is done again at the next start, which may come after an undo there.
  await expect.poll(() => valueAt(page, copy, "asking")).toBe(90_000);
  await page.goto(server.url);
  await expect(cards()).toHaveCount(8);
  await undo();
  await undo();
  await expect(cards()).toHaveCount(7);
});

test("two records are put together: choices, one edit, and one undo", async () => {
  const [mine, theirs] = [`listing:${listingId(1)}`, `listing:${listingId(2)}`];
  await page.goto(`${server.url}/listing/${listingId(1)}`);
  await page.locator("summary", { hasText: "Where it stands" }).click();
  await page.getByRole("link", { name: "Put together with another record" }).click();
  await page.getByRole("link", { name: /Gray lift twice/ }).click();
  const asked = (name: string) => page.getByRole("group", { name, exact: true });
  await expect(asked("Title").getByRole("radio")).toHaveCount(2);
  await asked("Title").getByText("Grey lift", { exact: false }).click();
  await asked("Asking price").getByText("$1,800").click();
  await page.getByRole("button", { name: "Put them together" }).click();
  await expect(page).toHaveURL(new RegExp(`/listing/${listingId(1)}$`));
  expect(await valueAt(page, mine, "title")).toBe("Grey lift");
  expect(await valueAt(page, mine, "asking")).toBe(180_000);
  expect(await valueAt(page, theirs, "away")).toMatchObject({ into: listingId(1) });
  await page.goto(`${server.url}/listing/${listingId(2)}`);
  await expect(page.getByText("It was put together with another record")).toBeVisible();
  await page.getByRole("link", { name: "Open that one" }).click();
  await undo();
  await expect.poll(() => valueAt(page, mine, "asking")).toBe(250_000);
  expect((await valueAt(page, theirs, "away")) ?? null).toBeNull();
  await page.goto(`${server.url}/listing/${listingId(4)}/unite`);
  await expect(page.getByText("There is no other record of this kind.")).toBeVisible();
  await page.goto(`${server.url}/listing/${listingId(4)}/unite?with=${listingId(1)}`);
  await expect(page.getByText(/only records of one kind/)).toBeVisible();
  await expect(page.getByRole("button", { name: "Put them together" })).toBeDisabled();
  expect(faults).toEqual([]);
});
