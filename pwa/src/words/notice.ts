/** Words of reading a listing's text. */
export const noticeWords = {
  title: "The listing's text",
  field: "Paste the listing's text",
  hint: "As it stands in the advertisement. It is read on this phone for price, size, year, supply and place; nothing is filled in before you tap.",
  aside: (n: number) => (n === 0 ? "" : n === 1 ? "1 to confirm" : `${n} to confirm`),
  reading: "Reading the text…",
  nothing: "Nothing in it was recognised. It is kept all the same.",
  allStand: "Everything recognised in it stands in the listing already.",
  found: "Recognised in it",
  foundHint: "Take what is right. Each stands with the words it came from.",
  useAll: (n: number) =>
    n === 1 ? "Take the one that is still empty" : `Take all ${n} that are still empty`,
  use: "Take it",
  useWhat: (title: string, value: string) => `${title} ${value}`,
  stands: "stands so",
  now: (value: string) => `Now: ${value}`,
  sure: { plain: "it says so", likely: "likely", doubtful: "doubtful" } as Record<string, string>,
  foreign: (currency: string, ours: string) =>
    `In ${currency}, and you count in ${ours}: convert it and enter it yourself.`,
  refused: (title: string, why: string) => `${title} was not taken: ${why}`,
  tooLong: (have: number, most: number) =>
    `${have} characters are too many: at most ${most}. Shorten the text.`,
  label: (title: string) => `${title}, from the listing's text`,
  allLabel: "Taken from the listing's text",
  seen: "Where it was seen",

  pasteTitle: "From an advertisement",
  kinds: "The text speaks of",
  otherKinds: "Other kinds",
  more: (n: number) =>
    n === 1
      ? "1 more thing was recognised: you confirm it next."
      : `${n} more things were recognised: you confirm them next.`,
};
