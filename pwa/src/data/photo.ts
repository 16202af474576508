import { pictureWords } from "../words/picture.ts";
import { current, type PhotoRow } from "./db.ts";
import { DataError } from "./error.ts";
import { physical, readDevice } from "./meta.ts";
import { checkPicture, type PictureHeader } from "./picture.ts";
import { tellSaved } from "./saved.ts";

export interface StoredPhoto {
  /** SHA-256 of the stored picture, lower-case hex. */
  hash: string;
  type: string;
  width: number;
  height: number;
  bytes: number;
  /** ISO 8601, UTC */
  at: string;
}

export interface Shrunk {
  data: ArrayBuffer;
  type: string;
  width: number;
  height: number;
}

const LONG_SIDE = 1_600;
const QUALITY = 0.8;
/** Room that must be left beside the photo, bytes: the answers come first. */
const SPARE_BYTES = 5 * 1024 * 1024;

/**
 * Shrinks and stores a picture. Rejects with DataError; nothing else is touched.
 * Then save `{at,width,height}` under photoPath(hash) with edit().
 */
export async function addPhoto(
  file: Blob,
  shrink: (file: Blob, header: PictureHeader) => Promise<Shrunk> = drawSmaller,
): Promise<StoredPhoto> {
  const store = current();
  const header = checkPicture(new Uint8Array(await readWhole(file)));
  await checkRoom(file.size);
  const { data, ...made } = await shrink(file, header);
  const hash = await sha256(data);
  const at = await store.read(["meta"], async () =>
    new Date(physical(await readDevice(store))).toISOString(),
  );
  const photo: StoredPhoto = { hash, ...made, bytes: data.byteLength, at };
  const kept = await store.write(["photos", "images"], async () => {
    const known = await store.photos.get(hash);
    if (known) {
      // Whatever became of the bytes that were kept under this hash: these are the right ones.
      const { refused: _, ...right } = known;
      await store.photos.put(right);
      await store.images.put({ hash, data });
      return right;
    }
    const row: PhotoRow = { ...photo, uploaded: 0 };
    await store.photos.put(row);
    await store.images.put({ hash, data });
    return row;
  });
  tellSaved();
  return { ...photo, at: kept.at };
}

/** `photo/<hash>`, or `finding/<check>/photo/<hash>`. */
export const photoPath = (hash: string, check?: string): string =>
  check === undefined ? `photo/${hash}` : `finding/${check}/photo/${hash}`;

const PHOTO_PATH = /^(?:finding\/[^/]+\/)?photo\/([0-9a-f]{64})$/;

/** The hash in the path of a photo, or undefined: paths of what belongs to one go on behind the hash. */
export const photoHash = (path: string): string | undefined => PHOTO_PATH.exec(path)?.[1];

export async function sha256(data: BufferSource): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", data));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

async function readWhole(file: Blob): Promise<ArrayBuffer> {
  try {
    return await file.arrayBuffer();
  } catch (cause) {
    throw new DataError("photo", pictureWords.unread, { cause });
  }
}

async function checkRoom(bytes: number): Promise<void> {
  if (typeof navigator === "undefined" || !navigator.storage?.estimate) return;
  const { quota, usage } = await navigator.storage
    .estimate()
    .catch(() => ({ quota: undefined, usage: undefined }));
  if (quota === undefined || usage === undefined) return;
  const lacking = bytes + SPARE_BYTES - (quota - usage);
  if (lacking > 0) {
    throw new DataError("quota", pictureWords.noRoom(Math.ceil(lacking / 1e6)));
  }
}

/** Upright, long side 1600, JPEG: drawing it anew also leaves place and device data behind. */
async function drawSmaller(file: Blob): Promise<Shrunk> {
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(file, { imageOrientation: "from-image" });
  } catch (cause) {
    throw new DataError("photo", pictureWords.unopened, { cause });
  }
  try {
    const scale = Math.min(1, LONG_SIDE / Math.max(bitmap.width, bitmap.height));
    const width = Math.max(1, Math.round(bitmap.width * scale));
    const height = Math.max(1, Math.round(bitmap.height * scale));
    const blob = await draw(bitmap, width, height);
    return { data: await blob.arrayBuffer(), type: "image/jpeg", width, height };
  } finally {
    bitmap.close();
  }
}

async function draw(bitmap: ImageBitmap, width: number, height: number): Promise<Blob> {
  if (typeof OffscreenCanvas !== "undefined") {
    const canvas = new OffscreenCanvas(width, height);
    if (paint(canvas.getContext("2d"), bitmap, width, height)) {
      return canvas.convertToBlob({ type: "image/jpeg", quality: QUALITY });
    }
  }
  const canvas = document.createElement("canvas");
  canvas.width = width;
  canvas.height = height;
  if (!paint(canvas.getContext("2d"), bitmap, width, height)) throw noCanvas();
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(noCanvas())), "image/jpeg", QUALITY);
  });
}

const noCanvas = (): DataError => new DataError("photo", pictureWords.unshrunk);

function paint(
  context: CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D | null,
  bitmap: ImageBitmap,
  width: number,
  height: number,
): boolean {
  if (!context) return false;
  // JPEG has no transparency; without this it would turn black.
  context.fillStyle = "#fff";
  context.fillRect(0, 0, width, height);
  context.drawImage(bitmap, 0, 0, width, height);
  return true;
}

/** A picture as it is here: only the very bytes that its hash names are handed on. */
export type CheckedPhoto =
  | { state: "whole"; blob: Blob; width: number; height: number }
  | { state: "missing" | "altered" };

export async function checkedPhoto(hash: string): Promise<CheckedPhoto> {
  const store = current();
  const found = await store.read(["photos", "images"], async () => {
    const photo = await store.photos.get(hash);
    const image = await store.images.get(hash);
    return photo && image && { photo, data: image.data };
  });
  if (!found) return { state: "missing" };
  const { photo, data } = found;
  if ((await sha256(data)) !== hash) return { state: "altered" };
  return {
    state: "whole",
    blob: new Blob([data], { type: photo.type }),
    width: photo.width,
    height: photo.height,
  };
}

/** The picture; undefined where it is missing, or is not the one its hash names. */
export async function photoBlob(hash: string): Promise<Blob | undefined> {
  const found = await checkedPhoto(hash);
  return found.state === "whole" ? found.blob : undefined;
}

export type ShownPhoto =
  | { state: "whole"; url: string; width: number; height: number }
  | { state: "missing" | "altered" };

const URLS_KEPT = 200;
const urls = new Map<string, Extract<ShownPhoto, { state: "whole" }>>();

/** The picture with an object URL, cached; the bytes behind a URL are a copy and cannot change. */
export async function shownPhoto(hash: string): Promise<ShownPhoto> {
  const known = urls.get(hash);
  if (known) {
    // Put last: the first ones are let go.
    urls.delete(hash);
    urls.set(hash, known);
    return known;
  }
  const found = await checkedPhoto(hash);
  if (found.state !== "whole") return found;
  const { blob, ...size } = found;
  const shown = urls.get(hash) ?? { ...size, url: URL.createObjectURL(blob) };
  urls.set(hash, shown);
  for (const [old, { url }] of urls) {
    if (urls.size <= URLS_KEPT) break;
    URL.revokeObjectURL(url);
    urls.delete(old);
  }
  return shown;
}
