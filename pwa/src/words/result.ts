import { checkedWords } from "./parts.ts";

/** Words of the result screen; the judgement's own sentences come from the engine. */
export const resultScreenWords = {
  title: "Result",
  backTitle: "Listing",
  loading: "Working out the judgement…",
  problemTitle: "No judgement yet",
  keptSafe: "What you entered is kept on this device.",
  verdict: "Verdict",
  points: "Behind it",
  morePoints: (found: number, unchecked: number) =>
    [found > 0 ? `${found} more found` : "", unchecked > 0 ? `${unchecked} more not checked` : ""]
      .filter((part) => part !== "")
      .join(", "),
  always: "With every verdict",
  notChecked: "not checked",
  prices: "What to pay",
  opening: "Opening offer",
  fair: "Fair offer",
  walkAway: "Walk-away price",
  odds: (n: string) => `comes out ahead in ${n} of 100`,
  noneOfThree: "Opening, fair and walk-away",
  noPrice: "none",
  notAsGift: "Not even as a gift at these odds.",
  addWorth: "Say what a sound one is worth",
  scores: "Scores",
  safety: "Safety",
  condition: "Condition",
  scoreOf: (value: string) => `${value} of 100`,
  scoreNone: "nothing checked",
  band: (low: string, high: string, coverage: string) =>
    `Hatched: could still come out anywhere from ${low} to ${high}, as ${coverage} of the weight is checked.`,
  scoreLines: "What counts towards it",
  scoreChecked: (checked: number, applies: number) => `${checked} of ${applies} points checked`,
  scoreLabel: (name: string, value: string, low: string, high: string) =>
    `${name}: ${value}; between ${low} and ${high} once the rest is checked.`,
  weight: (w: number) => `weight ${w}`,
  hidden: "What was not checked, point by point",
  chance: (share: string) => `${share} likely bad`,
  hiddenHigh: (amount: string) => `In one case of ten it costs more than ${amount}.`,
  care: "How it was kept, and what was not checked",
  careKey: "Filled: as the findings tell. Triangle: believed before looking.",
  careClasses: ["well kept", "ordinary", "neglected"] as [string, string, string],
  careBefore: (share: string) => `${share} before looking`,
  belief: "Your own belief before looking",
  beliefOwn: "own",
  beliefAsk: "How likely was it, before you looked, that it is",
  beliefHint:
    "In per cent; together 100. It replaces what is usual for the kind, its age and its seller. Nothing is saved until the three make 100.",
  beliefField: (name: string) => `${name} (%)`,
  beliefOf: (name: string, problem: string) => `${name}: ${problem}`,
  beliefSum: (sum: string) => `The three make ${sum} %: they must make 100 % together.`,
  beliefBack: "Back to what is usual",
  setBelief: "Own belief of how it was kept",
  next: "What to check next",
  nextNone: "Every point that applies was checked.",
  nextNoneOpen: (skipped: number) =>
    skipped === 1
      ? "Every point that applies has an answer; 1 was not checked."
      : `Every point that applies has an answer; ${skipped} were not checked.`,
  must: "must",
  minutes: (n: string) => `${n} min`,
  gain: (amount: string, perMinute: string) => `knowing it is worth ${amount}, ${perMinute} a minute`,
  noGain: "would not change the price",
  nextMore: (n: number, must: number) =>
    must === 0
      ? `${n} more`
      : must === n
        ? `${n} more that must be checked`
        : `${n} more, ${must} of them must`,
  nextAll: "All that is left, danger first, then by worth a minute",
  minutesLeft: "Minutes I have",
  planWorking: "Working out what fits…",
  planNoWorth:
    "What is worth the minutes shows once a worth is known: enter comparables or the price of a new one. Until then go through all of it, danger first.",
  planList: "What fits, in walking order",
  heldTitle: "Not to be tried now",
  notes: "To know",
  progress: (graded: number, applies: number, skipped: number, minutes: string) =>
    `${checkedWords(graded, applies, skipped)}${minutes === "0" ? "." : `; about ${minutes} minutes left.`}`,
  toEstimate: "Estimate",
  toOffer: "Offer",
};
