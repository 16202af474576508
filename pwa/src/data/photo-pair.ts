/** Two photos of the same point, before and after. */
import type { PhotoPair } from "../generated/types.ts";
import { isRecord, textOf } from "./shape.ts";
import type { Json } from "./value.ts";

/** The same bound as the engine holds an appraisal file to (checkphoto.go). */
export const MOST_PAIRS = 40;

/** `finding/<check>/pair/<id>` */
export const pairPath = (check: string, id: string): string => `finding/${check}/pair/${id}`;

export function pairOf(value: Json | undefined): PhotoPair | undefined {
  if (!isRecord(value)) return undefined;
  const before = textOf(value.before);
  const after = textOf(value.after);
  return before && after && before !== after ? { before, after } : undefined;
}

/** Those pairs both photos of which are there. */
export const standingPairs = <P extends PhotoPair>(pairs: readonly P[], photos: readonly string[]): P[] =>
  pairs.filter((pair) => photos.includes(pair.before) && photos.includes(pair.after)).slice(0, MOST_PAIRS);

/** Paths that go with a photo when it is removed: its marks, and the pairs it stands in. */
export function pathsOfPhoto(values: ReadonlyMap<string, Json>, photo: string): string[] {
  const hash = photo.slice(photo.lastIndexOf("/") + 1);
  const pairs = photo.startsWith("finding/") ? photo.replace(/photo\/[^/]+$/, "pair/") : undefined;
  const gone: string[] = [photo];
  for (const [path, value] of values) {
    if (path.startsWith(`${photo}/`)) gone.push(path);
    const pair = pairs !== undefined && path.startsWith(pairs) ? pairOf(value) : undefined;
    if (pair && (pair.before === hash || pair.after === hash)) gone.push(path);
  }
  return gone;
}
