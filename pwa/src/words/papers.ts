/** Words of the papers and tables for oneself. */
export const paperWords = {
  title: "Papers for yourself",
  step: "Papers for yourself",
  stepAside: "record, jobs, tables",
  back: "The listing",
  backToAll: "Papers for yourself",
  lead: "These hold what only you should see. For the seller there is a paper of its own.",
  papers: "Papers",
  toSeller: "The paper for the seller",
  kinds: {
    record: {
      title: "Appraisal record",
      note: "All of it: findings, estimate, worth, offer, and how each came about.",
    },
    jobs: {
      title: "Job list",
      note: "What to do in which order, what is needed once, what to buy and where, hours.",
    },
  },
  comparison: { title: "Comparison sheet", note: "Several listings side by side, from Compare." },
  compareFew: "Choose two listings or more to compare.",
  toCompare: "Compare",
  tables: "Tables and data",
  tablesHint: "To go on with in a spreadsheet or another program.",
  csv: "Save as CSV",
  csvOf: (table: string) => `${table} (CSV)`,
  xlsx: "Save all as one workbook (XLSX)",
  xlsxHint: "The workbook is made by your server, so it needs a connection.",
  json: "Save everything as JSON",
  jsonHint:
    "One file with the listing, every finding, prices and settings. Photos are named in it, not contained.",
  making: "Making it…",
  saved: (name: string) => `Saved: ${name}`,
  /** Beginnings of file names; nothing of them is private. */
  files: {
    estimate: "repair-estimate",
    record: "appraisal-record",
    jobs: "job-list",
    comparison: "comparison",
    tables: "appraisal-tables",
  },
};
