/** Words of the shared parts. */
export const moneyWords = {
  empty: "No amount: write it like 2400 or 2400.50.",
  negative: (given: string) => `“${given}” is below zero: write an amount of 0 or more.`,
  unreadable: (given: string) => `“${given}” is not an amount: write it like 2400 or 2400.50.`,
  tooLarge: (given: string) => `“${given}” is too large: at most 1000000000.`,
  letters: (given: string) => `“${given}” has letters in it: write the amount in digits, like 2400.`,
  foreign: (given: string, currency: string) =>
    `“${given}” is not in ${currency}: convert it, and write the amount alone.`,
};

export const rangeWords = {
  low: "At least",
  likely: "Most likely",
  high: "At most",
  order: "The three amounts must rise: at least, most likely, at most. Nothing is saved until they do.",
  incomplete: "Fill in all three amounts: at least, most likely, at most.",
};

/** How far a walkaround is: what was graded, and what was left out with a reason. */
export const checkedWords = (checked: number, all: number, skipped: number) =>
  skipped === 0 ? `${checked} of ${all} checked` : `${checked} of ${all} checked, ${skipped} not`;

export const pageWords = {
  back: "Back",
  loading: "Reading this phone…",
  noListingTitle: "Not on this phone",
  noListing: "There is no such listing on this phone. It may have been deleted, or not yet fetched.",
  toListings: "To the listings",
};

export const hazardWords: Record<string, string> = {
  danger: "Danger",
  warning: "Warning",
  caution: "Caution",
  notice: "Notice",
};

export const fieldWords = {
  optional: "optional",
  unset: "not told",
  notNumber: (given: string) => `“${given}” is not a number: write it like 12 or 12.5.`,
  notWhole: (given: string) => `“${given}” is not a whole number: write it like 12.`,
  twoWays: (given: string, whole: string, decimal: string) =>
    `“${given}” can be read two ways: write ${whole} or ${decimal}.`,
  otherUnit: (given: string, units: readonly string[]) =>
    `“${given}” has a unit not in use here: write the number alone, or with ${units.join(" or ")}.`,
  notYear: (given: string) => `“${given}” is not a year: write four digits, like 2014.`,
  shortYear: (given: string, year: number) => `“${given}” could be any century: write ${year}.`,
  futureYear: (given: string, most: number) => `${given} lies in the future: write a year up to ${most}.`,
  tooLow: (given: string, low: number) => `“${given}” is too small: at least ${low}.`,
  tooHigh: (given: string, high: number) => `“${given}” is too large: at most ${high}.`,
  tooLong: (have: number, most: number) => `${have} characters are too many: at most ${most}.`,
  required: "This cannot be empty.",
  unit: (label: string) => `Unit of ${label}`,
};

export const resultWords = {
  noRubric: "Say first what kind of equipment it is.",
  noCatalogue: "The engine did not start, so nothing is computed. What you enter is kept.",
};

export const whyWords = {
  ask: (figure: string) => (figure === "" ? "Why?" : `Why ${figure}?`),
  told: (title: string, figure: string) => (figure === "" ? title : `${title}: ${figure}`),
};

/** Cases of a hundred that are rarer than one. */
export const oddsWords = { fewest: "fewer than 1" };

export const stepperWords = {
  less: (label: string) => `Less: ${label}`,
  more: (label: string) => `More: ${label}`,
};
