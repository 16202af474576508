/** Words of the bench calculator, and of a measured limit wherever it is shown. */
export const benchWords = {
  title: "Bench calculator",
  about:
    "Every measured limit by itself, without a listing. What you enter here is not stored; it stays until the app is closed.",
  search: "Find a limit",
  none: (text: string) => `No limit matches “${text}”. Try a word like rope, press or thread.`,
  count: (n: number) => String(n),
  entered: "has entries",
  entry: "Write 3/8, 1 1/2, 9.5 mm, 0,35 or 3 000 psi: a unit you write counts.",
  enter: "What is known",
  more: "May stay empty",
  readFirst: "Read first",
  clear: "Clear these entries",
  unknown: "There is no such limit. It may belong to another version.",
  notTaken: (field: string, why: string) => `${field} could not be taken over: ${why}`,
  backToCheck: "Back to the check",
  open: "Open in the bench calculator",
};

export const limitWords = {
  maker: "The maker's own figure",
  makerHint: "From the manual or the plate. The maker's figure takes precedence over the one held here.",
  makerField: "Maker's figure",
  optional: "may stay empty",
  assumed: (text: string) => `taken as ${text} when empty`,
  either: (others: readonly string[]) => `this, or ${others.join(", ")}`,
  choose: "choose",
  none: "not told",
  notEntered: "Enter what is asked above, and the limit is worked out here.",
  unread: "One of the entries above cannot be read as it stands, so nothing is worked out yet.",
  result: "What it comes to",
  value: "Value",
  scale: (value: string, limit: string) => `Value ${value}, limit ${limit}`,
  valueIs: (value: string) => `value ${value}`,
  limitIs: (limit: string) => `limit ${limit}`,
  further: "Its figures",
  source: "Source",
  how: "Formula",
  price: (low: string, per: string) => `${low} per ${per}`,
  ownPrice: "own price",
  examplePrice: (dated: string) => (dated ? `example of ${dated}` : "example"),
};

/** What the standing of a figure means, by the engine's word for it. */
export const standingWords: Record<string, string> = {
  published: "Read in the source or in a public copy of it.",
  "seen in reprint": "Read in a reprint of a paid standard, not in the standard itself.",
  "common practice": "Trade custom without a standard behind it: it can warn, and clears nothing.",
  "from memory": "Recalled, not looked up: it can warn, and clears nothing.",
  "maker's own figure": "As you entered it from the manual or the plate.",
  definition: "Arithmetic or geometry: there is nothing to look up.",
};

/** The groups of further figures, by their ids. */
export const groupWords: Record<string, string> = {
  nearest: "Nearest standard threads",
  mistaken: "Easily mistaken for",
  "forced-in": "Probably forced in",
  "forced-into": "Probably forced into",
  repair: "Repairs",
};
