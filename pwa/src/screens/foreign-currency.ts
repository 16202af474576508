/**
 * The currency of a table where it is another than the shop's; undefined where it is
 * the same or not told. Both are ISO 4217 codes, the table's may be a sign alone.
 */
export function foreignCurrency(theirs: string, ours: string): string | undefined {
  if (theirs === "" || theirs === ours) return undefined;
  if (/^[A-Z]{3}$/.test(theirs)) return theirs;
  const own = new Intl.NumberFormat("en", {
    style: "currency",
    currency: ours,
    currencyDisplay: "narrowSymbol",
  })
    .formatToParts(1)
    .find((part) => part.type === "currency")?.value;
  return own === theirs ? undefined : theirs;
}
