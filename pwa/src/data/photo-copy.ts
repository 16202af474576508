/** Small copies of photos for papers: drawn anew, so that they hold neither place nor device. */
import { pictureWords } from "../words/picture.ts";
import { current } from "./db.ts";
import { DataError } from "./error.ts";
import { photoBlob } from "./photo.ts";

export interface PhotoCopy {
  /** JPEG */
  data: ArrayBuffer;
  width: number;
  height: number;
}

/** What is drawn onto a copy; `id` tells two drawings apart. */
export interface Paint {
  id: string;
  draw: (context: Context, width: number, height: number) => void;
}

type Context = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;

/** Bytes that all photos of one paper may take together. */
const ALL_BYTES = 4_400_000;
/** Bytes of one copy however few there are. */
const MOST_BYTES = 160_000;
/** Long side in pixels and quality, tried in turn until a copy fits; the last is taken as it comes. */
const STEPS = [
  [720, 0.8],
  [720, 0.65],
  [640, 0.58],
  [560, 0.5],
  [440, 0.42],
  [320, 0.35],
] as const;

/** Numbers of photos that share a size, so that one more or less does not make all copies anew. */
const TIERS = [27, 40, 60, 80, 120, 200];

/** Bytes one copy may take in a paper of so many photos. */
export const roomFor = (of: number): number =>
  Math.min(MOST_BYTES, Math.floor(ALL_BYTES / Math.max(1, TIERS.find((tier) => of <= tier) ?? of)));

/** The step the last copy of a size came to: photos of one visit are much alike, and each try takes its time. */
const lastStep = new Map<number, number>();

const KEPT = 240;
const copies = new Map<string, Promise<PhotoCopy | undefined>>();

/** A copy for a paper of so many photos; undefined when the picture is not on this device. */
export function copyForDocument(hash: string, of: number, paint?: Paint): Promise<PhotoCopy | undefined> {
  const room = roomFor(of);
  const key = `${hash}/${room}/${paint?.id ?? ""}`;
  const known = copies.get(key);
  if (known) return known;
  const making = make(hash, room, paint);
  copies.set(key, making);
  const forget = () => copies.delete(key);
  // A picture that is missing may still arrive.
  making.then((copy) => copy ?? forget(), forget);
  for (const old of copies.keys()) {
    if (copies.size <= KEPT) break;
    copies.delete(old);
  }
  return making;
}

/** Those of the hashes whose picture is not on this device. */
export async function notHere(hashes: readonly string[]): Promise<string[]> {
  const store = current();
  return store.read(["images"], async () => {
    const held = new Set(
      await store.images
        .where("hash")
        .anyOf([...hashes])
        .primaryKeys(),
    );
    return hashes.filter((hash) => !held.has(hash));
  });
}

async function make(hash: string, room: number, paint: Paint | undefined): Promise<PhotoCopy | undefined> {
  const blob = await photoBlob(hash);
  if (!blob) return undefined;
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(blob, { imageOrientation: "from-image" });
  } catch (cause) {
    throw new DataError("photo", pictureWords.copyUnopened, { cause });
  }
  try {
    for (let i = lastStep.get(room) ?? 0; i < STEPS.length; i++) {
      const [side, quality] = STEPS[i] ?? STEPS[0];
      const scale = Math.min(1, side / Math.max(bitmap.width, bitmap.height));
      const width = Math.max(1, Math.round(bitmap.width * scale));
      const height = Math.max(1, Math.round(bitmap.height * scale));
      const data = await (await drawn(bitmap, width, height, quality, paint)).arrayBuffer();
      if (data.byteLength > room && i + 1 < STEPS.length) continue;
      // A plainer picture than the ones before: the next may be larger again.
      lastStep.set(room, data.byteLength < room / 2 ? Math.max(0, i - 1) : i);
      return { data, width, height };
    }
  } finally {
    bitmap.close();
  }
  return undefined;
}

async function drawn(
  bitmap: ImageBitmap,
  width: number,
  height: number,
  quality: number,
  paint: Paint | undefined,
): Promise<Blob> {
  const draw = (context: Context | null) => {
    if (!context) throw noCanvas();
    // JPEG has no transparency; without this it would turn black.
    context.fillStyle = "#fff";
    context.fillRect(0, 0, width, height);
    context.imageSmoothingQuality = "high";
    context.drawImage(bitmap, 0, 0, width, height);
    paint?.draw(context, width, height);
  };
  if (typeof OffscreenCanvas !== "undefined") {
    const canvas = new OffscreenCanvas(width, height);
    draw(canvas.getContext("2d"));
    return canvas.convertToBlob({ type: "image/jpeg", quality });
  }
  const canvas = document.createElement("canvas");
  canvas.width = width;
  canvas.height = height;
  draw(canvas.getContext("2d"));
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(noCanvas())), "image/jpeg", quality);
  });
}

const noCanvas = (): DataError => new DataError("photo", pictureWords.copyUnshrunk);
