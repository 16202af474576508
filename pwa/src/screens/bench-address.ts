/** Where a limit stands in the bench calculator, with values and the way back. */
export function benchHref(name: string, given: Record<string, string> = {}, from?: string): string {
  const query = new URLSearchParams(given);
  if (from !== undefined) query.set(fromKey, from);
  const text = query.toString();
  return `/bench/${name}${text === "" ? "" : `?${text}`}`;
}

/** No quantity begins with an underscore. */
const fromKey = "_from";

/** The way back that an address names, only where it leads into a listing. */
export function backOf(query: Record<string, string>): string | undefined {
  const from = query[fromKey];
  return from !== undefined && /^\/listing\/[\w/-]+$/.test(from) ? from : undefined;
}
