/** Words of bringing in comparables from a table. */
export const importWords = {
  title: "Import a table",
  back: "Comparables",
  about:
    "A list of sales or offers saved from a spreadsheet as CSV or text: the first line names the columns, each line after it is one comparable. Nothing is kept before you have seen how it was read.",
  kind: "Kind of equipment in it",
  choose: "Choose a file",
  paste: "Or paste it here",
  pasteTable: "The table",
  pasteHint: "Copied from a spreadsheet, with the line that names the columns.",
  pasteRead: "Read what was pasted",
  pasteEmpty: "Nothing is pasted yet.",
  pasted: "what was pasted",
  reading: "Reading the table…",
  from: (name: string) => `From ${name}`,

  read: (read: number, total: number) =>
    read === total
      ? `${count(read, "row", "rows")} read, all of them.`
      : `${read} of ${count(total, "row", "rows")} read.`,
  leftOut: (n: number) =>
    n === 1 ? "1 row is left out: the reason is below." : `${n} rows are left out: the reasons are below.`,
  currency: (theirs: string, ours: string) =>
    `The prices are in ${theirs}, and you count in ${ours}. Nothing is converted: convert the file first, or leave it.`,

  how: "How it was read",
  separators: {
    comma: "Commas part the cells.",
    semicolon: "Semicolons part the cells.",
    tab: "Tabs part the cells.",
    "vertical bar": "Vertical bars part the cells.",
    none: "There is one column only: nothing parts the cells.",
  } as Record<string, string>,
  decimal: "Numbers like 1.234 or 1,234",
  decimalPoint: "The point starts the decimals: 1,234.50",
  decimalComma: "The comma starts the decimals: 1.234,50",
  days: "Dates like 03/04/2025",
  dayFirst: "Day first: 3 April",
  monthFirst: "Month first: March 4",
  basis: "Where the table does not say, prices were",
  unit: (title: string) => `${title} without a unit is in`,

  columns: "Columns",
  columnsUsed: (used: number, all: number) => `${used} of ${all} used`,
  columnsHint: "What each is read from. Choose another column where it is the wrong one.",
  noColumn: "no column",
  sample: (cells: readonly string[]) => cells.join(" · "),
  sampleNone: "empty in every row",
  unused: (names: readonly string[]) => `Not taken: ${names.join(", ")}.`,

  preview: "As they will be kept",
  previewMore: (n: number) => (n === 1 ? "And 1 more." : `And ${n} more.`),
  line: (n: number) => `line ${n}`,

  problems: (n: number) => count(n, "remark", "remarks"),
  problemAt: (line: number, column: string) =>
    column === "" ? `Line ${line}: ` : `Line ${line}, ${column}: `,
  more: (n: number) => `Show ${n} more`,

  add: (n: number) => `Add ${count(n, "comparable", "comparables")}`,
  adding: (done: number, all: number) => `Adding ${done} of ${all}…`,
  there: (n: number) => (n === 1 ? "1 is there already." : `${n} are there already.`),
  allThere: (n: number) =>
    n === 1 ? "It is there already: nothing to add." : `All ${n} are there already: nothing to add.`,
  none: "There is nothing to add",
  added: (n: number) => `${count(n, "comparable", "comparables")} added.`,
  wereThere: (n: number) => (n === 1 ? "1 was there already." : `${n} were there already.`),
  undo: "Undo takes all of them back.",
  failed: (n: number, why: string) =>
    n === 0
      ? why
      : `${count(n, "comparable was", "comparables were")} added, then it stopped. ${why} Add again for the rest.`,
  toComparables: "See them",
  label: (n: number) => `${count(n, "comparable", "comparables")} imported`,
};

function count(n: number, one: string, many: string): string {
  return n === 1 ? `1 ${one}` : `${n} ${many}`;
}
