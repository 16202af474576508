/** A new version waits for the tap, and nothing that was typed is lost by taking it. */
import { expect, test } from "@playwright/test";
import { Gate } from "./gate.ts";
import { openCheck, visitOnce } from "./person.ts";
import { listingId, seed } from "./seed.ts";
import { Server } from "./server.ts";

let server: Server;
test.beforeAll(async () => {
  server = await Server.start();
});
test.afterAll(() => server.remove());

test("a new version waits until it is tapped and then shows the same check", async ({ browser }) => {
  const gate = await Gate.open(() => server.port);
  const id = listingId(1);
  await seed(server.url, [{ id, file: "2-lift-half" }]);
  const context = await browser.newContext();
  const page = await context.newPage();
  await visitOnce(page, gate.url);
  await expect(page.locator(".tag-title")).toHaveCount(1, { timeout: 30_000 });
  await openCheck(page, `${gate.url}/listing/${id}`, "hoses");
  const other = await context.newPage();
  await openCheck(other, `${gate.url}/listing/${id}`, "oil");
  await page.bringToFront();

  let loads = 0;
  let otherLoads = 0;
  page.on("load", () => loads++);
  other.on("load", () => otherLoads++);
  const banner = page.getByText("A new version is ready. It waits until you tap.");
  const look = () =>
    page.evaluate(async () => {
      await (await navigator.serviceWorker.getRegistration())?.update();
    });
  await look();
  await page.waitForTimeout(500);
  await expect(banner).toHaveCount(0);

  gate.change = (path, body) =>
    path === "/sw.js" ? Buffer.concat([body, Buffer.from("\n// the next version\n")]) : body;
  // What the app does by itself once an hour.
  await look();
  await expect(banner).toBeVisible();
  const note = page.getByLabel("Note", { exact: true });
  await note.pressSequentially("weeping at the swivel");
  await page.waitForTimeout(1500);
  expect(loads).toBe(0);
  await expect(note).toHaveValue("weeping at the swivel");
  await note.pressSequentially(", since spring");

  await page.getByRole("button", { name: "Use the new version" }).click();
  await expect.poll(() => loads).toBe(1);
  await expect(page).toHaveURL(/\/walk\/hoses$/);
  await expect(note).toHaveValue("weeping at the swivel, since spring");
  await page.waitForTimeout(1500);
  expect(loads).toBe(1);
  await expect(banner).toHaveCount(0);
  // The other tab goes on undisturbed and is told.
  expect(otherLoads).toBe(0);
  await expect(other.getByText("The new version was started in another tab")).toBeVisible();
  const taken = await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    return [registration?.waiting ?? null, registration?.active?.state];
  });
  expect(taken).toEqual([null, "activated"]);
  await context.close();
  await gate.close();
});
