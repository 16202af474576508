/** What a screen is held to wherever it is looked at. */
import AxeBuilder from "@axe-core/playwright";
import type { Page } from "@playwright/test";

/** What is wrong with the screen as it stands: too wide, or a control too small for a thumb. */
export function measure(page: Page): Promise<string[]> {
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
export async function axe(page: Page, colours: boolean): Promise<string[]> {
  const builder = new AxeBuilder({ page });
  const { violations } = await (colours ? builder.withRules("color-contrast") : builder).analyze();
  return violations.flatMap((v) =>
    v.nodes.slice(0, 3).map((n) => `${v.id}: ${n.target.join(" ")} ${n.failureSummary}`),
  );
}
