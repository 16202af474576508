import { expect, test } from "vitest";
import { pageRules } from "./print-page.ts";

test("the number of the page follows the pattern of the language", () => {
  expect(pageRules({ foot: "Foot", page: "Page %s of %s" }, "letter")).toContain(
    `content: "Page " counter(page) " of " counter(pages);`,
  );
  expect(pageRules({ foot: "Foot", page: "%[2]s/%[1]s" }, "a4")).toContain(
    `content: counter(pages) "/" counter(page);`,
  );
});

test("the sheet is letter or A4", () => {
  expect(pageRules({ foot: "", page: "%s" }, "letter")).toContain("size: letter;");
  expect(pageRules({ foot: "", page: "%s" }, "a4")).toContain("size: A4;");
});

test("no text of the document ends the rule it stands in", () => {
  const rules = pageRules({ foot: `a"; } body { display: none } \\ \n`, page: "%s" }, "a4");
  expect(rules).toContain(`content: "a\\22 ; } body { display: none } \\5c  \\a ";`);
});
