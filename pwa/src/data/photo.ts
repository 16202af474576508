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
    if (known) return known;
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

/** The hash in the path of a photo, or undefined. */
export const photoHash = (path: string): string | undefined => PHOTO_PATH.exec(path)?.[1];

export async function sha256(data: BufferSource): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", data));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

async function readWhole(file: Blob): Promise<ArrayBuffer> {
  try {
    return await file.arrayBuffer();
  } catch (cause) {
    throw new DataError(
      "photo",
      "This photo could not be read: choose it again, or copy it to this device first.",
      { cause },
    );
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
    throw new DataError(
      "quota",
      `No room for this photo: free ${Math.ceil(lacking / 1e6)} MB on this device, then add it again. Your answers are kept.`,
    );
  }
}

/** Upright, long side 1600, JPEG: drawing it anew also leaves place and device data behind. */
async function drawSmaller(file: Blob): Promise<Shrunk> {
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(file, { imageOrientation: "from-image" });
  } catch (cause) {
    throw new DataError("photo", "This photo could not be opened; it may be damaged. Take it again.", {
      cause,
    });
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

const noCanvas = (): DataError =>
  new DataError("photo", "This browser could not shrink the photo: close other tabs and add it again.");

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

const URLS_KEPT = 200;
const urls = new Map<string, string>();

/** An object URL, cached; undefined when the picture is not on this device (yet). */
export async function photoUrl(hash: string): Promise<string | undefined> {
  const known = urls.get(hash);
  if (known) {
    // Put last: the first ones are let go.
    urls.delete(hash);
    urls.set(hash, known);
    return known;
  }
  const blob = await photoBlob(hash);
  if (!blob) return undefined;
  const url = urls.get(hash) ?? URL.createObjectURL(blob);
  urls.set(hash, url);
  for (const [old, oldUrl] of urls) {
    if (urls.size <= URLS_KEPT) break;
    URL.revokeObjectURL(oldUrl);
    urls.delete(old);
  }
  return url;
}

export async function photoBlob(hash: string): Promise<Blob | undefined> {
  const store = current();
  return store.read(["photos", "images"], async () => {
    const photo = await store.photos.get(hash);
    const image = await store.images.get(hash);
    return photo && image && new Blob([image.data], { type: photo.type });
  });
}
