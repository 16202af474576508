/** What a person can read stands in the catalogue of words, where it has its Spanish; this looks for what does not. */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { parseAst } from "vite";
import { expect, test } from "vitest";

const root = resolve(import.meta.dirname, "..");

interface Node {
  type: string;
  [member: string]: unknown;
}

const isNode = (thing: unknown): thing is Node =>
  typeof thing === "object" && thing !== null && "type" in thing;

const parsed = (file: string, text: string): Node =>
  parseAst(text, { lang: file.endsWith("x") ? "tsx" : "ts" }) as unknown as Node;

/** Every node below; `enter` returns false where it goes no deeper. */
function walk(thing: unknown, enter: (node: Node) => boolean): void {
  if (Array.isArray(thing)) for (const one of thing) walk(one, enter);
  else if (isNode(thing) && enter(thing)) for (const member of Object.values(thing)) walk(member, enter);
}

/** Two words side by side, or one with a capital. */
const SENTENCE = /\p{L}{2,}[,:;.]? \p{L}{2,}|^[^/]*(?<!\p{L})\p{Lu}\p{Ll}{2,}(?!\p{L})/u;
/** Names of classes are no words, and types and addresses of modules are not shown. */
const silent = (node: Node): boolean =>
  (node.type === "JSXAttribute" && (node.name as Node).name === "class") ||
  /^(?:Import|ExportAll)/.test(node.type) ||
  (node.type.startsWith("TS") && !/^TS(?:As|Satisfies|NonNull)/.test(node.type));

/** Texts in a source that read like words for a person. */
function sentences(file: string, text: string): string[] {
  const found: string[] = [];
  walk(parsed(file, text), (node) => {
    if (silent(node)) return false;
    const said =
      node.type === "TemplateElement" ? (node.value as { cooked: string }).cooked : (node.value as unknown);
    if (typeof said !== "string") return true;
    const shown = node.type === "JSXText" ? /\p{L}/u.test(said) : SENTENCE.test(said);
    if (shown) found.push(said.trim());
    return true;
  });
  return found;
}

const TESTING = /\.test\.|\.test-data\.|^data\/testing\.ts$|^sync\/fake-server\.ts$/;

/** Sources beside the words, by their path in src. */
const sources = new Map(
  readdirSync(root, { recursive: true, encoding: "utf8" })
    .map((file) => file.replaceAll("\\", "/"))
    .filter((file) => /\.tsx?$/.test(file) && !/^(?:words|generated)\//.test(file) && !TESTING.test(file))
    .map((file) => [file, readFileSync(join(root, file), "utf8")] as const),
);

/** What is no language, by file. */
const ALLOWED: readonly (readonly [file: string, text: string, reason: string])[] = [
  ["charts/finding-mark.tsx", "within limit", "a code of the engine's"],
  ["charts/finding-mark.tsx", "beyond limit", "a code of the engine's"],
  ["charts/limit-span.ts", "within limit", "a code of the engine's"],
  ["charts/limit-span.ts", "beyond limit", "a code of the engine's"],
  ["screens/check.tsx", "within limit", "a code of the engine's"],
  ["screens/check.tsx", "beyond limit", "a code of the engine's"],
  ["parts/photo-layer.tsx", "xMidYMid slice", "SVG"],
  ["screens/compare-table.tsx", "thead th:not(.side-corner)", "a selector"],
  ["screens/compare-table.tsx", "(prefers-reduced-motion: reduce)", "a media query"],
  ["screens/visit.tsx", "main details:not([open])", "a selector"],
  ["data/db.ts", "key, doc, path, own, losers", "indexes of the store"],
  ["data/db.ts", "hash, uploaded", "indexes of the store"],
  ["data/db.ts", "key, row", "indexes of the store"],
  ["data/photo-marks.ts", "px system-ui, sans-serif", "a font"],
  ["data/error.ts", "Error", "the end of names of errors"],
  ["data/storage.ts", "=1; Max-Age=31536000; Path=/; SameSite=Strict", "a cookie"],
  ["sync/http.ts", "Trouble", "the name of an error"],
  ["screens/photo-sheet.tsx", "Enter", "the name of a key"],
  ["screens/photo.tsx", "· Asfound", "the app's name"],
  ["parts/page.tsx", "· Asfound", "the app's name"],
  ["data/hand-over.ts", "BZ CA CL CO CR GT MX NI PA PH PR SV US VE", "codes of countries"],
];
/** Style sheets, not one text. */
const STYLES = new Set(["parts/print-page.ts"]);

test("no sentence stands outside the catalogue of words", () => {
  const left: string[] = [];
  const used = new Set<unknown>();
  for (const [file, text] of sources) {
    if (STYLES.has(file)) continue;
    for (const said of sentences(file, text)) {
      const allowed = ALLOWED.find(([at, what]) => at === file && what === said);
      if (allowed) used.add(allowed);
      else left.push(`${file}: ${said}`);
    }
  }
  expect(left).toEqual([]);
  expect(ALLOWED.filter((one) => !used.has(one))).toEqual([]);
});

test("the look finds texts, templates and what stands between tags, and nothing else", () => {
  const source = `
    import x from "./two words";
    const a: "in a type" = \`Lost \${n} of them all\`;
    throw new Error("it is gone");
    const b = <p class="button button-main" title="say this" label="Photos">Hello {"x-y"} 12 %</p>;`;
  expect(sentences("a.tsx", source)).toEqual([
    "Lost",
    "of them all",
    "it is gone",
    "say this",
    "Photos",
    "Hello",
  ]);
});

/** Modules that main.tsx reads at once, before the words are in the reader's language. */
function readAtOnce(file: string, seen = new Set<string>()): Set<string> {
  const text = sources.get(file);
  if (text === undefined || seen.has(file)) return seen;
  seen.add(file);
  for (const node of parsed(file, text).body as Node[]) {
    const from = isNode(node.source) ? String(node.source.value) : "";
    if (!from.startsWith(".") || node.importKind === "type") continue;
    readAtOnce(relative(root, resolve(root, dirname(file), from)).replaceAll("\\", "/"), seen);
  }
  return seen;
}

/** Words a module takes while it is read, outside of every function. */
function takenEarly(file: string, text: string): string[] {
  const module = parsed(file, text);
  const words = new Set<unknown>();
  for (const node of module.body as Node[]) {
    if (node.type !== "ImportDeclaration" || !/\/words\//.test(String((node.source as Node).value))) continue;
    for (const one of node.specifiers as Node[]) words.add((one.local as Node).name);
  }
  const found: string[] = [];
  walk(module, (node) => {
    if (/Function/.test(node.type)) return false;
    const { object } = node;
    if (node.type === "MemberExpression" && isNode(object) && words.has(object.name))
      found.push(`${file}: ${String(object.name)}`);
    return true;
  });
  return found;
}

test("what is read before the words are chosen takes none of them while it is read", () => {
  const early = readAtOnce("main.tsx");
  expect(early).toContain("data/error.ts");
  expect(early).not.toContain("app.tsx");
  expect([...early].flatMap((file) => takenEarly(file, sources.get(file) ?? ""))).toEqual([]);
  const bad = 'import { w } from "../words/w.ts"; const late = () => w.b; const early = w.a;';
  expect(takenEarly("a.ts", bad)).toEqual(["a.ts: w"]);
});
