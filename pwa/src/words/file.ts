/** Words of what was left out of the file that the engine judges, and what would be right. */
export const fileWords = {
  leftOut: (where: string, path: string, right: string) =>
    `${where}${path} is left out: it should be ${right}.`,
  book: "Price book: ",
  comparables: "Comparables: ",
  settings: "Settings: ",
  otherVersion: (named: number, used: number) =>
    `Version ${named} of this rubric is not on this device: it is judged by version ${used}.`,
};

/** What a field should be; each goes on after "it should be". */
export const rightWords = {
  text: "a text",
  money: "an amount of 0 or more, in whole cents",
  quantity: "a number with its unit",
  quantityOrWord: "a number with its unit, or a word",
  range: "three amounts in rising order",
  rubric: "a kind of equipment and its version",
  date: "a date such as 2031-05-20",
  year: "a year such as 1998",
  hours: "hours of 0 or more",
  years: "years of 0 or more",
  count: "a count of 0 or more",
  whole: "a whole number of 0 or more",
  phases: "1 or 3",
  points: "a share in whole basis points",
  rate: "a rate in whole basis points",
  chances: "three chances in whole basis points that make 10000 together",
  odds: "three odds",
  overrun: "a mean and a spread",
  day: "hours of a working day",
  photo: "a photo",
  marks: "marks on a photo",
  marksLeft: (most: number, left: number) =>
    `at most ${most} marks, one scale among them, each inside of the picture (${left} left out)`,
  pair: "two photos, before and after",
  answer: "a grade of 0 to 4, or a reason for not checking",
  measured: "measured values",
  part: "a title, a unit and three amounts in rising order",
  landing: "off, or three amounts in rising order",
  comparable: "a comparable",
  comparableWhole: "a comparable with a title, a price in cents, and asked or sold",
  lost: (mostPercent: number) => `a share of 0 to ${mostPercent} % in basis points, with a reason`,
  output: "two figures above 0, used and rated, no more used than rated",
  adjust: "off or nothing",
};
