/** Whether the pictures kept here are the ones that were recorded: their bytes hashed again. */
import { current, type Store } from "./db.ts";
import { checkedPhoto, photoHash } from "./photo.ts";
import { rowKey, rowValue } from "./row.ts";
import { tellSaved } from "./saved.ts";
import { isRecord, textOf } from "./shape.ts";

export interface NamedPhoto {
  hash: string;
  /** The document whose row names it, and the check it belongs to. */
  doc: string;
  check: string | undefined;
  /** ISO 8601, UTC, as the row says; "" unknown */
  at: string;
}

/** Photos that rows of listings name which are not deleted, each once. Loads no picture. */
export function namedPhotos(
  store: Store,
  wanted: (hash: string) => boolean = () => true,
): Promise<NamedPhoto[]> {
  return store.read(["rows"], async () => {
    const photoRows = await store.rows
      .where("path")
      .startsWithAnyOf("photo/", "finding/")
      .and((row) => wanted(photoHash(row.path) ?? "") && photoHash(row.path) !== undefined)
      .toArray();
    const deleted = await store.rows.bulkGet(photoRows.map((row) => rowKey(row.doc, "deleted")));
    const named = new Map<string, NamedPhoto>();
    for (const [i, row] of photoRows.entries()) {
      const removal = deleted[i];
      const value = rowValue(row);
      const hash = photoHash(row.path);
      if (!hash || value === null || (removal && rowValue(removal) === true)) continue;
      const check = /^finding\/([^/]+)\//.exec(row.path)?.[1];
      named.set(hash, { hash, doc: row.doc, check, at: isRecord(value) ? (textOf(value.at) ?? "") : "" });
    }
    return [...named.values()];
  });
}

export interface PhotoCheck {
  whole: number;
  missing: number;
  altered: NamedPhoto[];
}

/** Hashes every photo that is named, one after the other. `tell` is told how many are done, of how many. */
export async function checkAllPhotos(tell: (done: number, all: number) => void): Promise<PhotoCheck> {
  const named = await namedPhotos(current());
  const result: PhotoCheck = { whole: 0, missing: 0, altered: [] };
  for (const [i, photo] of named.entries()) {
    tell(i, named.length);
    const { state } = await checkedPhoto(photo.hash);
    if (state === "altered") result.altered.push(photo);
    else result[state] += 1;
  }
  return result;
}

/** What can be done about an altered picture: the recorded one may be had again from the server. */
export async function canFetchAgain(hash: string): Promise<boolean> {
  const store = current();
  return (await store.read(["photos"], () => store.photos.get(hash)))?.uploaded === 1;
}

/** Gives the altered bytes up, so that the next exchange fetches the recorded ones; false where only these are known. */
export async function fetchAgain(hash: string): Promise<boolean> {
  if (!(await canFetchAgain(hash)) || (await checkedPhoto(hash)).state !== "altered") return false;
  const store = current();
  await store.write(["photos", "images"], async () => {
    await store.photos.delete(hash);
    await store.images.delete(hash);
  });
  tellSaved();
  return true;
}
