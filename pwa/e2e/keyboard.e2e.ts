/** The whole walkaround without a pointer. */
import { expect, type Locator, type Page, test } from "@playwright/test";
import { gradeButton, visitOnce } from "./person.ts";
import { listingId, seed } from "./seed.ts";
import { Server } from "./server.ts";

/** Presses Tab until the thing has the focus, as somebody without a pointer must. */
async function tabTo(page: Page, target: Locator, most = 60): Promise<void> {
  await expect(target).toBeVisible({ timeout: 20_000 });
  for (let i = 0; i < most; i++) {
    if (await target.evaluate((node) => node === document.activeElement)) return;
    await page.keyboard.press("Tab");
    expect(await focusIsSeen(page)).toBe("seen");
  }
  throw new Error(`${target} is not reached by ${most} presses of Tab`);
}

/** Tells whether the focused control wears a mark and lies on the screen, under nothing. */
function focusIsSeen(page: Page): Promise<string> {
  return page.evaluate(async () => {
    const node = document.activeElement;
    if (!(node instanceof HTMLElement) || node === document.body) return "seen";
    await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
    // A hidden radio or file button is marked on its label.
    const label = node instanceof HTMLInputElement ? node.labels?.[0] : undefined;
    const words = (label ?? node).textContent ?? "";
    const named = `${node.tagName} ${node.getAttribute("type") ?? ""} ${node.className} "${words.slice(0, 40)}"`;
    const marked = [node, label, label?.querySelector("span"), node.nextElementSibling].some((one) => {
      if (!one) return false;
      const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(one);
      return (outlineStyle !== "none" && Number.parseFloat(outlineWidth) >= 2) || boxShadow !== "none";
    });
    if (!marked) return `${named} shows no focus: ${getComputedStyle(node).outline}`;
    const box = (node.getBoundingClientRect().width > 4 || !label ? node : label).getBoundingClientRect();
    const x = box.left + Math.min(box.width / 2, 40);
    const y = box.top + Math.min(box.height / 2, 20);
    if (y < 0 || y > innerHeight) return `${named} lies off the screen`;
    const top = document.elementFromPoint(x, y);
    const shown = !!top && (node.contains(top) || top.contains(node) || !!label?.contains(top));
    return shown ? "seen" : `${named} lies under ${top?.className}`;
  });
}

/** A check is there, with the focus at its head: from now on it listens to keys. */
async function arrived(page: Page): Promise<void> {
  await expect(page.locator(".grade").first()).toBeVisible();
  await expect(page.getByRole("heading", { level: 1 })).toBeFocused();
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 50))));
}

let server: Server;
test.beforeAll(async () => {
  server = await Server.start();
});
test.afterAll(() => server.remove());

test("the keyboard alone walks around a lift, grades, and takes back", async ({ browser }) => {
  const id = listingId(1);
  await seed(server.url, [{ id, file: "3-lift-listed", listing: { title: "Lift by keys (invented)" } }]);
  const context = await browser.newContext({ hasTouch: false, isMobile: false });
  const page = await context.newPage();
  await visitOnce(page, server.url);
  await tabTo(page, page.getByRole("link", { name: /Lift by keys/ }));
  await page.keyboard.press("Enter");
  await expect(page).toHaveURL(/\/listing\/[^/]+$/);
  await tabTo(page, page.getByRole("link", { name: "Walk around it" }), 120);
  await page.keyboard.press("Enter");
  await tabTo(page, page.getByRole("button", { name: "I have read these" }));
  await page.keyboard.press("Enter");
  await tabTo(page, page.getByRole("link", { name: "Next open check" }), 90);
  await page.keyboard.press("Enter");

  await expect(page).toHaveURL(/\/walk\/[a-z-]+$/);
  const first = page.url();
  await arrived(page);
  await page.keyboard.press("3");
  await expect(gradeButton(page, 3)).toHaveAttribute("aria-pressed", "true");
  await page.keyboard.press("n");
  await expect(page).not.toHaveURL(first);
  const second = page.url();
  await arrived(page);
  // Letters and digits typed into a note are text, no commands.
  const note = page.getByLabel("Note", { exact: true });
  await tabTo(page, note);
  await page.keyboard.type("n 2 pins, 1 worn");
  await expect(note).toHaveValue("n 2 pins, 1 worn");
  await expect(page).toHaveURL(second);
  await expect(page.locator('.grade[aria-pressed="true"]')).toHaveCount(0);
  await page.keyboard.press("Shift+Tab");
  const offered = page.locator(".grade:not([disabled])").last();
  const key = (await offered.getAttribute("aria-keyshortcuts")) ?? "";
  await page.keyboard.press(key);
  await expect(offered).toHaveAttribute("aria-pressed", "true");
  await page.keyboard.press("Control+z");
  await expect(offered).toHaveAttribute("aria-pressed", "false");
  await page.keyboard.press("p");
  await expect(page).toHaveURL(first);
  await arrived(page);
  await expect(gradeButton(page, 3)).toHaveAttribute("aria-pressed", "true");

  // From check to check by keys alone, a reason by Tab and Enter where it cannot be done.
  for (let i = 0; i < 4; i++) {
    const at = page.url();
    await page.keyboard.press("n");
    await expect(page).not.toHaveURL(at);
    await arrived(page);
    if (i === 3) {
      const reason = page.getByRole("button", { name: "No access" });
      await tabTo(page, reason);
      await page.keyboard.press("Enter");
      await expect(reason).toHaveAttribute("aria-pressed", "true");
      continue;
    }
    const last = page.locator(".grade:not([disabled])").last();
    await page.keyboard.press((await last.getAttribute("aria-keyshortcuts")) ?? "");
    await expect(last).toHaveAttribute("aria-pressed", "true");
  }
  await tabTo(page, page.getByRole("link", { name: "All checks" }).last());
  await page.keyboard.press("Enter");
  await expect(page.getByText(/^4 of \d+ checked, 1 not/)).toBeVisible();
  await context.close();
});
