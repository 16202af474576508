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
  newPart: "A part of your own",
  newPartHint: "For rubrics of your own: they name it by the id shown when it is kept.",
  partTitle: "What it is",
  partUnit: "Unit it is sold by",
  partPrice: "Its price",
  partIncomplete: "Say what it is, by which unit it is sold, and its three prices.",
  addThisPart: "Add this part",
  addPart: "Own part added",
  partAdded: (title: string, id: string) => `“${title}” is in the book, as ${id}.`,
  ownPart: (id: string) => `A part of your own: rubrics name it ${id}.`,
  removePart: "Take this part out of the book",
  loading: "Reading the price book…",
};

/** Words of the price book as a table. */
export const pricesTableWords = {
  title: "The price book as a table",
  hint: "Save it, change prices in a spreadsheet, and read it in again. Low, likely and high are asked for every price; a line left empty changes nothing.",
  write: "Save as CSV",
  file: (date: string) => `asfound-prices-${date}.csv`,
  written: (name: string) => `Written: ${name}`,
  read: "Read CSV",
  preview: "What it would change",
  count: (read: number, total: number) =>
    read === total ? `${lines(total)} read, all of them.` : `${read} of ${lines(total)} can be used.`,
  changes: (n: number) =>
    n === 0 ? "No price changes." : n === 1 ? "1 price changes." : `${n} prices change.`,
  empty: (n: number) => `${lines(n)} without a price.`,
  wasOwn: "own so far:",
  wasExample: "example so far:",
  line: (n: number) => `line ${n}`,
  apply: (n: number) => (n === 1 ? "Make this price your own" : `Make these ${n} prices your own`),
  nothing: "There is nothing to change",
  leave: "Leave it",
  applied: (n: number) =>
    n === 1
      ? "1 price is your own now. Undo takes it back."
      : `${n} prices are your own now. Undo takes all back.`,
  label: (n: number) => (n === 1 ? "1 price read from a table" : `${n} prices read from a table`),
};

const lines = (n: number) => (n === 1 ? "1 line" : `${n} lines`);
