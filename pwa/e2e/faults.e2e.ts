/** What goes wrong around the app, and what is then still there. */
import { type BrowserContext, expect, type Page, test } from "@playwright/test";
import { Gate } from "./gate.ts";
import { badge, checkNow, fill, grade, gradeButton, openCheck, picture, visitOnce } from "./person.ts";
import { held, heldByServer, mark, table, valueAt } from "./replica.ts";
import { listingId, seed } from "./seed.ts";
import { Server } from "./server.ts";

let server: Server;
let gate: Gate;
let context: BrowserContext;
let page: Page;

const id = listingId(1);
const doc = `listing:${id}`;
let listing: string;

test.beforeEach(async ({ browser }) => {
  server = await Server.start();
  gate = await Gate.open(() => server.port);
  listing = `${gate.url}/listing/${id}`;
  await seed(server.url, [{ id, file: "2-lift-half", listing: { title: "Half-walked lift (invented)" } }]);
  context = await browser.newContext();
  page = await context.newPage();
});
test.afterEach(async () => {
  await context.close();
  await gate.close();
  await server.remove();
});

/** The listing is here, with everything needed offline. */
async function arrive(): Promise<void> {
  await visitOnce(page, gate.url);
  await expect(page.locator(".tag-title")).toHaveCount(1, { timeout: 30_000 });
}

/** Adds a file as the camera would hand it over. */
async function addPhoto(name: string, mimeType: string, buffer: Buffer): Promise<void> {
  await page.locator('input[type="file"]').first().setInputFiles({ name, mimeType, buffer });
}

test("a server that answers rubbish gets nothing marked as sent, and all of it later", async () => {
  await arrive();
  await openCheck(page, listing, "hoses");
  await expect(badge(page)).toHaveText("On the server");
  const before = await mark(page);

  const rubbish: [string, (res: import("node:http").ServerResponse) => void][] = [
    [
      "a page of a hotel",
      (res) => res.writeHead(200, { "content-type": "text/html" }).end("<h1>Log in</h1>"),
    ],
    [
      "an answer that means nothing",
      (res) => res.writeHead(200, { "content-type": "application/json", asfound: "1" }).end('{"seq":"x"}'),
    ],
    [
      "half an answer",
      (res) => res.writeHead(200, { "content-type": "application/json", asfound: "1" }).end('{"n'),
    ],
    ["a fault", (res) => res.writeHead(500, { "content-type": "text/plain" }).end("oops")],
    ["silence, then a broken line", (res) => void setTimeout(() => res.destroy(), 1500)],
  ];
  let n = 0;
  for (const [name, answer] of rubbish) {
    gate.spoil = (path, res) => {
      if (path !== "/api/sync") return false;
      answer(res);
      return true;
    };
    await grade(page, n % 2 === 0 ? 1 : 3);
    n++;
    const asked = gate.asked.get("/api/sync") ?? 0;
    await checkNow(page);
    expect(gate.asked.get("/api/sync") ?? 0, name).toBeGreaterThan(asked);
    await expect(badge(page), name).toHaveText("1 waiting for the server");
    expect(await mark(page), name).toBe(before);
    expect(await table(page, "parked"), name).toEqual([]);
  }
  await expect(gradeButton(page, 1)).toHaveAttribute("aria-pressed", "true");

  gate.spoil = () => false;
  await checkNow(page);
  await expect(badge(page)).toHaveText("On the server");
  expect((await mark(page)) > before).toBe(true);
  expect(await held(page)).toBe(await heldByServer(server.url));
});

test("full storage keeps the answer, and says what to do", async ({ browser }) => {
  // Without the kept app, which would take more room than is left here.
  const small = await browser.newContext({ serviceWorkers: "block" });
  const tab = await small.newPage();
  const cdp = await small.newCDPSession(tab);
  const room = (quotaSize?: number) =>
    cdp.send("Storage.overrideQuotaForOrigin", { origin: gate.url, ...(quotaSize ? { quotaSize } : {}) });
  await room(900_000);
  await tab.goto(gate.url);
  await expect(tab.locator(".tag-title")).toHaveCount(1, { timeout: 30_000 });
  await openCheck(tab, listing, "hoses");
  const photo = tab.locator('input[type="file"]').first();
  const dense = { name: "hose.jpg", mimeType: "image/jpeg", buffer: await noise(tab) };
  await grade(tab, 1);
  await photo.setInputFiles(dense);
  await expect(tab.locator(".photos").getByRole("alert")).toHaveText(/^hose\.jpg: .*no room left/);
  await expect(tab.locator(".photo-thumb")).toHaveCount(0);
  // Answers are small and go on.
  await grade(tab, 3);
  await tab.reload();
  await expect(gradeButton(tab, 3)).toHaveAttribute("aria-pressed", "true");

  // Not even an answer fits: it is not shown as kept, and the one before stays.
  await fillUp(tab);
  await gradeButton(tab, 0).click();
  await expect(tab.locator(".banner-problem").filter({ hasText: "no room left" })).toBeVisible();
  await expect(gradeButton(tab, 3)).toHaveAttribute("aria-pressed", "true");
  await expect(gradeButton(tab, 0)).toHaveAttribute("aria-pressed", "false");

  // Room again, and all is as before.
  await tab.evaluate(
    () =>
      new Promise<void>((done) => {
        indexedDB.deleteDatabase("filler").onsuccess = () => done();
      }),
  );
  await room();
  await expect(async () => {
    await gradeButton(tab, 2).click();
    await expect(gradeButton(tab, 2)).toHaveAttribute("aria-pressed", "true", { timeout: 1000 });
  }).toPass({ timeout: 45_000 });
  await small.close();
});

/** A picture that does not pack: it stays above a megabyte whatever is done to it. */
async function noise(tab: Page): Promise<Buffer> {
  const base64 = await tab.evaluate(async () => {
    const canvas = new OffscreenCanvas(1600, 1200);
    const ink = canvas.getContext("2d");
    if (!ink) throw new Error("no canvas");
    const image = ink.createImageData(1600, 1200);
    for (let i = 0; i < image.data.length; i++) image.data[i] = i % 4 === 3 ? 255 : Math.random() * 256;
    ink.putImageData(image, 0, 0);
    const blob = await canvas.convertToBlob({ type: "image/jpeg", quality: 0.9 });
    const bytes = new Uint8Array(await blob.arrayBuffer());
    let out = "";
    for (let i = 0; i < bytes.length; i += 8192) out += String.fromCharCode(...bytes.subarray(i, i + 8192));
    return btoa(out);
  });
  return Buffer.from(base64, "base64");
}

/** Takes all the room that is left, in pieces down to a few bytes. */
function fillUp(tab: Page): Promise<void> {
  return tab.evaluate(async () => {
    const db = await new Promise<IDBDatabase>((done, fail) => {
      const opening = indexedDB.open("filler", 1);
      opening.onupgradeneeded = () => opening.result.createObjectStore("bulk", { autoIncrement: true });
      opening.onsuccess = () => done(opening.result);
      opening.onerror = () => fail(opening.error);
    });
    const put = (bytes: number) =>
      new Promise<boolean>((done) => {
        const tx = db.transaction("bulk", "readwrite");
        tx.objectStore("bulk").add(crypto.getRandomValues(new Uint8Array(bytes)));
        tx.oncomplete = () => done(true);
        tx.onabort = () => done(false);
      });
    for (const piece of [65_536, 8192, 1024, 128]) {
      for (let i = 0; i < 400 && (await put(piece)); i++);
    }
    db.close();
  });
}

test("a file that is no usable photo is named at the button, and a good one works after it", async () => {
  await arrive();
  await openCheck(page, listing, "hoses");
  const good = await picture(page, "HOSE");
  const huge = Buffer.alloc(64);
  Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52]).copy(
    huge,
  );
  huge.writeUInt32BE(10_000, 16);
  huge.writeUInt32BE(6_000, 20);
  const bad: [string, string, Buffer, RegExp][] = [
    [
      "notes.jpg",
      "image/jpeg",
      Buffer.from("just some words, no picture"),
      /notes\.jpg: This file is not a photo/,
    ],
    ["empty.jpg", "image/jpeg", Buffer.alloc(0), /empty\.jpg: This photo is empty \(0 bytes\)/],
    ["huge.png", "image/png", huge, /huge\.png: This photo has 10000 x 6000 pixels: at most 50 million/],
    ["phone.heic", "image/heic", Buffer.from("\0\0\0\u0018ftypheic\0\0\0\0mif1heic"), /phone\.heic: .*HEIC/],
    ["torn.jpg", "image/jpeg", good.subarray(0, 200), /torn\.jpg: This photo/],
  ];
  for (const [name, type, bytes, message] of bad) {
    await addPhoto(name, type, bytes);
    const said = page.locator(".photos").getByRole("alert");
    await expect(said).toHaveText(message);
    await expect(page.locator(".photo-thumb")).toHaveCount(0);
  }
  expect(await table(page, "images")).toEqual([]);
  await addPhoto("hose.jpg", "image/jpeg", good);
  await expect(page.locator("img.photo-thumb")).toHaveCount(1);
  await expect(page.locator(".photos").getByRole("alert")).toHaveCount(0);
});

test("two tabs on one check show the newer answer in both", async () => {
  await arrive();
  await openCheck(page, listing, "hoses");
  const other = await context.newPage();
  await openCheck(other, listing, "hoses");
  await grade(page, 3);
  await expect(gradeButton(other, 3)).toHaveAttribute("aria-pressed", "true");
  await grade(other, 1);
  await expect(gradeButton(page, 1)).toHaveAttribute("aria-pressed", "true");
  await expect(gradeButton(page, 3)).toHaveAttribute("aria-pressed", "false");
  await fill(other, "Note", "cracked at the ferrule");
  await expect(page.getByLabel("Note", { exact: true })).toHaveValue("cracked at the ferrule");
});

test("a tab closed or left right after a tap or a letter loses nothing", async () => {
  await arrive();
  await server.stop();
  await openCheck(page, listing, "hoses");
  for (const n of [3, 1, 2, 0, 4]) {
    await gradeButton(page, n).click();
    await page.close();
    page = await context.newPage();
    await page.goto(`${listing}/walk/hoses`);
    await expect(gradeButton(page, n)).toHaveAttribute("aria-pressed", "true");
  }
  for (const words of ["a", "ab, weeping", "ab, weeping at the swivel"]) {
    // No pause and no leaving of the field: the tab goes while it is being typed.
    await page.getByLabel("Note", { exact: true }).fill(words);
    await page.goto(`${gate.url}/settings`);
    await page.goto(`${listing}/walk/hoses`);
    await expect(page.getByLabel("Note", { exact: true })).toHaveValue(words);
  }
  for (const asking of ["1500", "1501", "1502"]) {
    await page.goto(listing);
    await fill(page, "Asking price", asking);
    await page.goto(`${gate.url}/settings`);
    await expect.poll(() => valueAt(page, doc, "asking")).toBe(Number(asking) * 100);
  }
  const left = await page.evaluate(() =>
    Object.keys(localStorage).filter((k) => k.startsWith("asfound-unsaved")),
  );
  expect(left).toEqual([]);
});

test("a grade, a note and a deleted listing are taken back by Undo", async () => {
  await arrive();
  const undo = page.locator(".strip-undo");
  await openCheck(page, listing, "slide-blocks");
  await expect(gradeButton(page, 1)).toHaveAttribute("aria-pressed", "true");
  await grade(page, 4);
  await undo.click();
  await expect(gradeButton(page, 1)).toHaveAttribute("aria-pressed", "true");
  await expect(page.getByText(/^Undone: Grade/)).toBeVisible();

  await fill(page, "Note", "first words");
  await expect(undo).toContainText("Note");
  await undo.click();
  await expect(page.getByLabel("Note", { exact: true })).toHaveValue("");
  await expect.poll(() => valueAt(page, doc, "finding/slide-blocks/note")).toBe(null);

  await page.goto(listing);
  await page.getByRole("button", { name: "Delete this listing" }).click();
  await expect(page.getByText("This listing is deleted.")).toBeVisible();
  await page.goto(gate.url);
  await expect(page.getByText(/Deleted \(1\)/)).toBeVisible();
  await undo.click();
  await expect(page.getByText(/Deleted \(1\)/)).toHaveCount(0);
  await expect(page.locator(".tag-title")).toHaveText("Half-walked lift (invented)");
});

test("everything goes out as a file and comes in elsewhere; a spoilt file changes nothing", async ({
  browser,
}) => {
  await arrive();
  await openCheck(page, listing, "hoses");
  await grade(page, 1);
  await addPhoto("hose.jpg", "image/jpeg", await picture(page, "HOSE"));
  await expect(page.locator("img.photo-thumb")).toHaveCount(1);
  await page.goto(`${gate.url}/backup`);
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Export", exact: true }).click(),
  ]);
  const { readFile } = await import("node:fs/promises");
  const file = await readFile(await download.path());

  // Another shop, that has never heard of this one.
  const elsewhere = await Server.start();
  const fresh = await browser.newContext();
  const there = await fresh.newPage();
  await visitOnce(there, elsewhere.url);
  await there.goto(`${elsewhere.url}/backup`);
  const choose = (name: string, buffer: Buffer) =>
    there.locator('input[type="file"]').setInputFiles({ name, mimeType: "application/zip", buffer });
  const inside = Buffer.from(file);
  for (let at = Math.floor(file.length / 3); at < Math.floor(file.length / 3) + 40; at++) inside[at] = 0x55;
  const spoilt: [string, Buffer][] = [
    ["torn.zip", file.subarray(0, Math.floor(file.length * 0.6))],
    ["words.zip", Buffer.from("no archive at all")],
    ["empty.zip", Buffer.alloc(0)],
  ];
  const before = await held(there);
  for (const [name, bytes] of spoilt) {
    await choose(name, bytes);
    await expect(there.getByRole("alert").first()).toBeVisible();
    await expect(there.getByRole("button", { name: "Import it" })).toHaveCount(0);
    expect(await held(there), name).toBe(before);
    expect(await table(there, "images"), name).toEqual([]);
    await there.reload();
  }
  // Bytes changed in the middle hit the photo: it is named, and nothing is kept before the report is accepted.
  await choose("changed.zip", inside);
  await expect(there.getByRole("alert").or(there.getByText("left out:")).first()).toBeVisible();
  expect(await held(there)).toBe(before);
  await there.reload();

  await choose("backup.zip", file);
  await there.getByRole("button", { name: "Import it" }).click();
  await expect(there.getByText("Imported.")).toBeVisible();
  expect(await held(there)).toBe(await held(page));
  await there.goto(`${elsewhere.url}/listing/${id}`);
  await expect(there.getByRole("heading", { level: 1 })).toHaveText("Half-walked lift (invented)");
  await openCheck(there, `${elsewhere.url}/listing/${id}`, "hoses");
  await expect(gradeButton(there, 1)).toHaveAttribute("aria-pressed", "true");
  await expect(there.locator("img.photo-thumb")).toHaveCount(1);
  await checkNow(there);
  await expect(badge(there)).toHaveText("On the server");
  expect(await heldByServer(elsewhere.url)).toBe(await held(page));
  await fresh.close();
  await elsewhere.remove();
});

test("without the engine the findings are still captured, and it says that nothing is scored", async ({
  browser,
}) => {
  gate.spoil = (path, res) => {
    if (!path.includes(".wasm")) return false;
    res.destroy();
    return true;
  };
  const bare = await browser.newContext({ serviceWorkers: "block" });
  const tab = await bare.newPage();
  await tab.goto(gate.url);
  await expect(
    tab.getByRole("alert").filter({ hasText: "scores and prices are not computed" }),
  ).toBeVisible();
  await expect(tab.locator(".tag-title")).toHaveCount(1, { timeout: 30_000 });
  await openCheck(tab, listing, "hoses");
  await grade(tab, 1);
  await fill(tab, "Note", "weeping");
  await expect.poll(() => valueAt(tab, doc, "finding/hoses/note")).toBe("weeping");
  await tab.goto(`${listing}/result`);
  await expect(tab.getByText("No judgement yet")).toBeVisible();

  gate.spoil = () => false;
  await tab.reload();
  await expect(tab.locator(".stamp-title")).toBeVisible({ timeout: 30_000 });
  await openCheck(tab, listing, "hoses");
  await expect(gradeButton(tab, 1)).toHaveAttribute("aria-pressed", "true");
  await bare.close();
});
