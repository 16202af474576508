/** Names a rubric, and where its very text is kept: in pieces, under its own hash. */
import type { RubricRef } from "../generated/types.ts";
import { integerOf, isRecord, textOf } from "./shape.ts";
import type { Json } from "./value.ts";

/** Characters of one piece: far below what one value may hold, whatever they are. */
export const PIECE = 16_000;

/** The largest text kept, characters: as much as a rubric file may have bytes. */
const MOST_TEXT = 2 << 20;

export interface RubricMark extends RubricRef {
  /** SHA-256 of the text, lower-case hex. */
  hash: string;
  pieces: number;
}

const HASH = /^[0-9a-f]{64}$/;

export function rubricMarkOf(value: Json | undefined): RubricMark | undefined {
  if (!isRecord(value)) return undefined;
  const id = textOf(value.id);
  const hash = textOf(value.hash);
  const version = integerOf(value.version);
  const pieces = integerOf(value.pieces);
  if (id === undefined || version === undefined || hash === undefined || pieces === undefined)
    return undefined;
  const most = Math.ceil(MOST_TEXT / PIECE);
  return HASH.test(hash) && pieces > 0 && pieces <= most ? { id, version, hash, pieces } : undefined;
}
