/** Words of the shared parts. */
export const moneyWords = {
  empty: "No amount: write it like 2400 or 2400.50.",
  negative: (given: string) => `“${given}” is below zero: write an amount of 0 or more.`,
  unreadable: (given: string) => `“${given}” is not an amount: write it like 2400 or 2400.50.`,
  tooLarge: (given: string) => `“${given}” is too large: at most 1000000000.`,
};

export const rangeWords = {
  low: "At least",
  likely: "Most likely",
  high: "At most",
  order: "The three amounts must rise: at least, most likely, at most. Nothing is saved until they do.",
  incomplete: "Fill in all three amounts: at least, most likely, at most.",
};

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
