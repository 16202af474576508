import { paperWords as words } from "../words/papers.ts";

export type NamedPaper = keyof typeof words.files;

/** A file's name without its ending: what it is and the day of the appraisal, and nothing that could be private. */
export const fileName = (paper: NamedPaper, date: string | undefined): string =>
  /^\d{4}-\d{2}-\d{2}$/.test(date ?? "") ? `${words.files[paper]}-${date}` : words.files[paper];
