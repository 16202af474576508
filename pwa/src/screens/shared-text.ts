/** Characters of a listing's text that are kept. */
export const longestText = 20_000;

/**
 * What another app handed over: title, text and address as one text, each said
 * once; apps put the address into the text, or the title into both.
 */
export function sharedText(query: Record<string, string>): string {
  const parts: string[] = [];
  for (const part of [query.title, query.text, query.url]) {
    const said = part?.trim() ?? "";
    if (said !== "" && !parts.some((other) => other.includes(said))) parts.push(said);
  }
  // A title that the text begins with is no line of its own.
  const [first, second] = parts;
  return (first && second?.startsWith(first) ? parts.slice(1) : parts).join("\n");
}
