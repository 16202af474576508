/** Words of the price book. */
export const pricesWords = {
  title: "Price book",
  about: (dated: string) =>
    `The prices marked example are invented round figures${dated ? ` of ${dated}` : ""}. Put your own supplier's in their place.`,
  region: (share: string) => `Appraisals take the examples times the ${share} of your region.`,
  example: "example",
  own: "own",
  per: (unit: string) => `per ${unit}`,
  exampleOf: (range: string, dated: string) => `Example${dated ? ` of ${dated}` : ""}: ${range}`,
  ownPrice: (unit: string) => `Own price per ${unit}`,
  emptyIsExample: "Left empty, the example price counts.",
  setPart: "Own price of a part",
  reset: "Back to the example price",
  resetLabel: "Price back to the example",
  search: "Find a part",
  onlyOwn: "Only own prices",
  ownCount: (own: number, all: number) => `${own} of ${all} with an own price`,
  noneFound: (text: string) => `No part matches “${text}”.`,
  noneOwn: "No own price yet.",
  unknown: "Prices of parts no longer in the book",
  unknownHint: "Kept, but no repair uses them any more.",
  loading: "Reading the price book…",
};
