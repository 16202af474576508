/** Photos travel apart from the entries, by their content hash, in chunks that can be resumed. */
import type { PhotoRow, Store } from "../data/db.ts";
import { DataError } from "../data/error.ts";
import { sha256 } from "../data/photo.ts";
import { type NamedPhoto, namedPhotos } from "../data/photo-proof.ts";
import { checkPicture } from "../data/picture.ts";
import { textOf } from "../data/shape.ts";
import { photoRefusedWords, serverWords } from "../words/server.ts";
import { call, callForBytes, type Fetch, garbled } from "./http.ts";

export const CHUNK_BYTES = 256 * 1024;

/** Photos not on the server and not refused by it. In a transaction or a live query. */
export const photosToSend = (store: Store): Promise<number> =>
  store.photos
    .where("uploaded")
    .equals(0)
    .and((photo) => photo.refused === undefined)
    .count();

/**
 * Uploads photos until all are there or `interrupted` says that something more urgent waits.
 * Tells whether it finished. Throws Trouble.
 */
export async function uploadPhotos(
  store: Store,
  fetcher: Fetch,
  interrupted: () => boolean,
): Promise<boolean> {
  for (;;) {
    if (interrupted()) return false;
    const photo = await store.read(["photos"], () =>
      store.photos
        .where("uploaded")
        .equals(0)
        .and((one) => one.refused === undefined)
        .first(),
    );
    if (!photo) return true;
    const done = await upload(store, fetcher, photo, interrupted);
    if (!done) return false;
  }
}

async function upload(
  store: Store,
  fetcher: Fetch,
  photo: PhotoRow,
  interrupted: () => boolean,
): Promise<boolean> {
  const url = `/api/photos/${photo.hash}`;
  const note = (change: Partial<Pick<PhotoRow, "uploaded" | "refused">>) =>
    store.write(["photos"], () => store.photos.update(photo.hash, change));
  const data = await store.read(["images"], async () => (await store.images.get(photo.hash))?.data);
  if (!data) {
    await note({ refused: photoRefusedWords.missing });
    return true;
  }
  if ((await sha256(data)) !== photo.hash) {
    await note({ refused: photoRefusedWords.altered });
    return true;
  }
  let { have, whole } = await progress(call(fetcher, `${url}/have`));
  // A chunk that does not move the count twice running is a fault of the server, not of the line.
  let stuck = 0;
  while (!whole) {
    if (interrupted()) return false;
    if (have > data.byteLength || stuck > 1) throw garbled();
    const { status, body } = await call(fetcher, url, {
      method: "PUT",
      headers: {
        "content-type": "application/octet-stream",
        "upload-offset": String(have),
        "upload-length": String(data.byteLength),
      },
      body: data.slice(have, have + CHUNK_BYTES),
    });
    const refusal = status === 413 || status === 415 || status === 422;
    if (refusal) {
      await note({ refused: whyRefused(status, body) });
      return true;
    }
    const next = readProgress(body);
    if (!next) throw garbled();
    stuck = next.have === have && !next.whole ? stuck + 1 : 0;
    ({ have, whole } = next);
  }
  await note({ uploaded: 1 });
  return true;
}

/** In our own words where the server names a reason we know. */
function whyRefused(status: number, body: { [key: string]: unknown }): string {
  if (body.code === "too-large") return photoRefusedWords.tooLarge;
  if (body.code === "wrong-hash") return photoRefusedWords.wrongHash;
  if (body.code === "no-picture") return photoRefusedWords.noPicture;
  return textOf(body.message as string) ?? serverWords.refusedWith(status);
}

interface Progress {
  have: number;
  whole: boolean;
}

async function progress(answer: ReturnType<typeof call>): Promise<Progress> {
  const { status, body } = await answer;
  if (status === 404) return { have: 0, whole: false };
  const found = readProgress(body);
  if (!found) throw garbled();
  return found;
}

function readProgress(body: { [key: string]: unknown }): Progress | undefined {
  const { have, whole } = body;
  return typeof have === "number" && Number.isSafeInteger(have) && have >= 0
    ? { have, whole: whole === true }
    : undefined;
}

/** Photos that rows name and this device has not got. */
export async function missingPhotos(store: Store): Promise<NamedPhoto[]> {
  const held = await store.read(
    ["photos"],
    async () => new Set(await store.photos.toCollection().primaryKeys()),
  );
  return namedPhotos(store, (hash) => !held.has(hash));
}

/** What the server has under a photo's name and is not that photo; found out anew in every session. */
const altered = new Set<string>();

export const alteredOnServer = (hash: string): boolean => altered.has(hash);

/** Fetches photos that others made; `absent` remembers those the server has not got yet. Tells whether it finished. */
export async function downloadPhotos(
  store: Store,
  fetcher: Fetch,
  interrupted: () => boolean,
  absent: Set<string>,
): Promise<boolean> {
  for (const { hash, at } of await missingPhotos(store)) {
    if (absent.has(hash)) continue;
    if (interrupted()) return false;
    const data = await callForBytes(fetcher, `/api/photos/${hash}`);
    const photo = data === undefined || data === "altered" ? data : await asPhoto(data, hash, at);
    if (photo === "altered") altered.add(hash);
    if (photo === undefined || photo === "altered" || typeof data !== "object") {
      absent.add(hash);
      continue;
    }
    altered.delete(hash);
    await store.write(["photos", "images"], async () => {
      await store.photos.put(photo);
      await store.images.put({ hash, data });
    });
  }
  return true;
}

/** Only what is the named picture is kept. */
async function asPhoto(
  data: ArrayBuffer,
  hash: string,
  at: string,
): Promise<PhotoRow | "altered" | undefined> {
  if ((await sha256(data)) !== hash) return "altered";
  try {
    const header = checkPicture(new Uint8Array(data));
    return { hash, ...header, bytes: data.byteLength, at, uploaded: 1 };
  } catch (cause) {
    if (cause instanceof DataError) return undefined;
    throw cause;
  }
}
