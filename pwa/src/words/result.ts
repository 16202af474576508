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
  morePoints: (n: number) => `${n} more not checked`,
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
  hidden: "What was not checked",
  hiddenPoints: "Point by point",
  chance: (share: string) => `${share} likely bad`,
  hiddenHigh: (amount: string) => `In one case of ten it costs more than ${amount}.`,
  care: "How it was kept, as far as the findings tell",
  careClasses: ["well kept", "ordinary", "neglected"] as const,
  careBefore: (share: string) => `${share} before looking`,
  next: "What to check next",
  nextNone: "Every point that applies was checked.",
  nextNoneOpen: (skipped: number) =>
    skipped === 1
      ? "Every point that applies has an answer; 1 was not checked."
      : `Every point that applies has an answer; ${skipped} were not checked.`,
  must: "must",
  minutes: (n: string) => `${n} min`,
  gain: (amount: string) => `knowing it is worth ${amount}`,
  noGain: "would not change the price",
  nextMore: (n: number, must: number) =>
    must === 0
      ? `${n} more`
      : must === n
        ? `${n} more that must be checked`
        : `${n} more, ${must} of them must`,
  heldTitle: "Not to be tried now",
  notes: "To know",
  progress: (graded: number, applies: number, skipped: number, minutes: string) =>
    `${checkedWords(graded, applies, skipped)}${minutes === "0" ? "." : `; about ${minutes} minutes left.`}`,
  toEstimate: "Estimate",
  toOffer: "Offer",
};
