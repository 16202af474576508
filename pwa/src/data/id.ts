const LETTERS = "0123456789abcdefghjkmnpqrstvwxyz";

/** A new listing or comparable id: 26 characters, time first, so ids sort by birth. */
export function newId(now: number = Date.now()): string {
  let time = "";
  for (let rest = now, i = 0; i < 10; i++) {
    time = LETTERS.charAt(rest % 32) + time;
    rest = Math.floor(rest / 32);
  }
  const random = crypto.getRandomValues(new Uint8Array(16));
  return time + Array.from(random, (byte) => LETTERS.charAt(byte & 31)).join("");
}

export const listingDoc = (id: string): string => `listing:${id}`;

/** The id in `listing:<id>`, or undefined for another document. */
export const listingId = (doc: string): string | undefined =>
  doc.startsWith("listing:") ? doc.slice("listing:".length) : undefined;
