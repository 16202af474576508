/** Words of keeping things on this device, and of why something was not kept. */
export const storeFaultWords = {
  quota:
    "This device has no room left, so nothing was saved just now. Free some space (old photos, other apps) and save again; what you typed is still on the screen.",
  stuck: "Saving took too long and was given up; nothing was changed. Try again, or reload the page.",
  lost: "The connection to this device's storage was lost. What you typed is still on the screen: reload the page and enter it again if it is missing.",
  outdated: "A newer version of the app is open in another tab. Reload this page to go on.",
  blocked: "Another tab holds an older version of the app. Close the other tabs, then reload this page.",
  unavailable:
    "This browser does not let the app keep anything (private window or a policy). All is lost when the page closes: save a backup file before that.",
  unknown: "Something went wrong while saving; nothing was changed. Try again, or reload the page.",
};

export const saveWords = {
  twice: (label: string) => `"${label}" was not saved: it sets one field twice.`,
  noDocument: (doc: string) => `Nothing was saved: "${doc}" names no document.`,
  noField: (path: string) => `Nothing was saved: "${path}" names no field.`,
  farDate: "Nothing was saved: set the date of this device; it is after the year 9999.",
  badValue: (path: string, why: string) => `"${path}" was not saved: its value ${why}.`,
  tooLong: (path: string, have: number, most: number) =>
    `"${path}" was not saved: it is ${have} KiB long; at most ${most} KiB fit. Shorten the text.`,
  bringBack: "Bring back",
  keep: "Keep",
  settledMeanwhile:
    "That value is no longer there: the field was settled meanwhile, on another device perhaps.",
  noListing: "There is no such listing on this device.",
};

/** Why something is no value; each goes on after "the value". */
export const valueWords = {
  infinite: "is not a finite number",
  noJson: (kind: string) => `is a ${kind}, not JSON`,
  deep: (most: number) => `is nested deeper than ${most} levels`,
  nul: "contains a NUL character",
  half: "contains half a character",
};

/** Why a row of a backup file was not taken. */
export const rowWords = {
  noEntry: "an entry must be an object with value, stamp and base",
  stamp: "the stamp is malformed: 32 lower-case hex digits, a year before 10000, a device",
  base: "the base is malformed: a stamp, or empty",
  baseNewer: "the base is not older than the stamp",
  noValue: "the value is missing: write null for a removed value",
  value: (why: string) => `the value ${why}`,
  tooLong: (most: number) => `the value is longer than ${most} KiB`,
  settles: "settles must list stamps older than the entry's own",
  noRow: "a row must be an object with doc, path, entries and seen",
  document:
    "the document is unknown: shop, book, comparables, rubrics, decisions or listing: and 26 characters",
  path: "the path is malformed: 1 to 6 names of a-z, 0-9, _ . - joined by /",
  entries: "entries must be a list",
  seen: "seen must be a list of stamps",
  empty: "the row is empty",
};
