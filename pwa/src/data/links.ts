/** Links given to a seller, and what he answered; rows `link/<id>`, `link/<id>/opened`, `link/<id>/answer/<line>`. */
import type { Values } from "./reader.ts";
import { isRecord, textOf } from "./shape.ts";
import type { Json } from "./value.ts";

export interface Answer {
  /** Path of the row, which no other answer has. */
  path: string;
  link: string;
  /** The line or finding it is about, as the paper names it. */
  line: string;
  says: "agree" | "disagree" | "done" | "";
  word: string;
  /** Hash of his photo. */
  photo: string | undefined;
  /** ISO 8601, UTC; "" where not told. */
  at: string;
}

/** Tells one answer from another. */
export type AnswerMark = Pick<Answer, "path" | "at">;

export interface Link {
  id: string;
  url: string;
  /** ISO 8601, UTC */
  created: string;
  expires: string;
  language: string;
  withdrawn: boolean;
  /** Rows of its QR code, "1" dark. */
  qr: string[];
  /** It opens beyond this machine. */
  public: boolean;
  /** When it was last opened. */
  opened: string | undefined;
  answers: Answer[];
}

const SAYS = new Set(["agree", "disagree", "done"]);
const HASH = /^[0-9a-f]{64}$/;

/** The links of a listing, the newest first. */
export function linksOf(values: Values): Link[] {
  const links: Link[] = [];
  for (const [path, value] of values) {
    const id = /^link\/([^/]+)$/.exec(path)?.[1];
    if (id === undefined || !isRecord(value)) continue;
    const opened = values.get(`${path}/opened`);
    links.push({
      id,
      url: textOf(value.url) ?? "",
      created: textOf(value.created) ?? "",
      expires: textOf(value.expires) ?? "",
      language: textOf(value.language) ?? "",
      withdrawn: value.withdrawn === true || textOf(value.withdrawn) !== undefined,
      qr: Array.isArray(value.qr) ? value.qr.filter((row) => typeof row === "string") : [],
      public: value.public !== false,
      opened: isRecord(opened) ? textOf(opened.last) : undefined,
      answers: answersUnder(values, id),
    });
  }
  return links.sort((a, b) => (a.created > b.created ? -1 : 1));
}

/** By this device's clock; the server's decides. */
export const hasExpired = (link: Link): boolean => Date.parse(link.expires) <= Date.now();
export const isOpen = (link: Link): boolean => !link.withdrawn && !hasExpired(link);

/** All answers to a listing's papers, the newest first. */
export function answersOf(values: Values): Answer[] {
  return answersUnder(values, undefined);
}

function answersUnder(values: Values, link: string | undefined): Answer[] {
  const answers: Answer[] = [];
  for (const [path, value] of values) {
    const found = /^link\/([^/]+)\/answer\/([^/]+)$/.exec(path);
    if (!found || (link !== undefined && found[1] !== link)) continue;
    const answer = answerOf(path, found[1] ?? "", found[2] ?? "", value);
    if (answer) answers.push(answer);
  }
  return answers.sort((a, b) => (a.at > b.at ? -1 : a.at < b.at ? 1 : a.path < b.path ? -1 : 1));
}

function answerOf(path: string, link: string, line: string, value: Json): Answer | undefined {
  if (!isRecord(value)) return undefined;
  const says = textOf(value.says) ?? "";
  const photo = textOf(value.photo);
  return {
    path,
    link,
    line,
    says: SAYS.has(says) ? (says as Answer["says"]) : "",
    word: textOf(value.word) ?? "",
    photo: photo !== undefined && HASH.test(photo) ? photo : undefined,
    at: textOf(value.at) ?? "",
  };
}

/** The hash of the photo that a row's answer came with, or undefined. */
export const answerPhoto = (path: string, value: Json): string | undefined => {
  const found = /^link\/([^/]+)\/answer\/([^/]+)$/.exec(path);
  return found ? answerOf(path, found[1] ?? "", found[2] ?? "", value)?.photo : undefined;
};
