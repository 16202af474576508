import { useEffect } from "preact/hooks";
import type { Document } from "../generated/types.ts";

/** A text as CSS says it between quotes. */
const quoted = (text: string): string =>
  `"${text.replace(/["\\\p{Cc}]/gu, (c) => `\\${c.codePointAt(0)?.toString(16)} `)}"`;

/** The pattern of a page number, "Page %s of %s" or with %[2]s, as the content of a margin box. */
function pageNumber(pattern: string): string {
  const counters = ["counter(page)", "counter(pages)"];
  let next = 0;
  const pieces = pattern.split(/(%(?:\[\d+\])?[sdv])/).map((piece) => {
    const verb = /^%(?:\[(\d+)\])?[sdv]$/.exec(piece);
    if (!verb) return piece === "" ? "" : quoted(piece);
    const at = verb[1] === undefined ? next : Number(verb[1]) - 1;
    next = at + 1;
    return counters[at] ?? "";
  });
  return pieces.filter(Boolean).join(" ");
}

/** The rules for printing a document: size of the sheet, its foot and the number of the page. */
export function pageRules(document: Pick<Document, "foot" | "page">, page: string): string {
  const size = page === "letter" ? "letter" : "A4";
  const box = "font: 8pt sans-serif; color: #3f4a53; vertical-align: top; padding-top: 3mm;";
  return `@page {
  size: ${size};
  margin: 15mm 15mm 18mm;
  @bottom-left { content: ${quoted(document.foot)}; ${box} width: 78%; text-align: left; }
  @bottom-right { content: ${pageNumber(document.page)}; ${box} white-space: nowrap; }
}`;
}

/** While the screen shows it, printing gives the paper its size, foot and page numbers, where the browser can. */
export function usePrintPage(document: Document | undefined, page: string): void {
  useEffect(() => {
    if (!document) return;
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(pageRules(document, page));
    // Where the browser can set a foot on every page, it need not stand at the end as well.
    const [rule] = sheet.cssRules;
    if (rule && "cssRules" in rule && (rule.cssRules as CSSRuleList).length > 0)
      sheet.insertRule("@media print { .paper-foot { display: none; } }", 1);
    window.document.adoptedStyleSheets = [...window.document.adoptedStyleSheets, sheet];
    return () => {
      window.document.adoptedStyleSheets = window.document.adoptedStyleSheets.filter((s) => s !== sheet);
    };
  }, [document, page]);
}
