/** The header of a picture, read without decoding it: a small file can unpack to gigabytes. */
import { pictureWords } from "../words/picture.ts";
import { DataError } from "./error.ts";

export interface PictureHeader {
  type: "image/jpeg" | "image/png" | "image/webp";
  width: number;
  height: number;
}

const MAX_PIXELS = 50_000_000;
const MAX_SIDE = 12_000;
/** Bytes of one file as it comes from the camera or album. */
const MAX_FILE_BYTES = 60 * 1024 * 1024;

const photoError = (message: string): DataError => new DataError("photo", message);

/** Checks size, kind and dimensions. Throws DataError in words for the screen. */
export function checkPicture(bytes: Uint8Array): PictureHeader {
  if (bytes.length === 0) throw photoError(pictureWords.empty);
  if (bytes.length > MAX_FILE_BYTES) {
    throw photoError(pictureWords.heavy(Math.round(bytes.length / 2 ** 20), MAX_FILE_BYTES / 2 ** 20));
  }
  const header = readHeader(bytes);
  const { width, height } = header;
  if (width === 0 || height === 0) throw photoError(pictureWords.noSize);
  if (width > MAX_SIDE || height > MAX_SIDE) {
    throw photoError(pictureWords.sides(width, height, MAX_SIDE));
  }
  if (width * height > MAX_PIXELS) {
    throw photoError(pictureWords.pixels(width, height, MAX_PIXELS / 1e6));
  }
  return header;
}

function readHeader(bytes: Uint8Array): PictureHeader {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    if (startsWith(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return png(view);
    if (startsWith(bytes, [0xff, 0xd8, 0xff])) return jpeg(view);
    if (ascii(bytes, 0, 4) === "RIFF" && ascii(bytes, 8, 4) === "WEBP") return webp(view, bytes);
  } catch (cause) {
    // DataView throws a RangeError past the end.
    if (!(cause instanceof RangeError)) throw cause;
    throw photoError(pictureWords.cutOff);
  }
  throw photoError(otherKind(bytes));
}

const HEIC_BRANDS = ["heic", "heix", "hevc", "hevx", "heim", "heis", "mif1", "msf1"];

function otherKind(bytes: Uint8Array): string {
  if (ascii(bytes, 4, 4) === "ftyp" && HEIC_BRANDS.includes(ascii(bytes, 8, 4))) {
    return pictureWords.heic;
  }
  if (ascii(bytes, 0, 3) === "GIF") return pictureWords.gif;
  return pictureWords.noPhoto;
}

const startsWith = (bytes: Uint8Array, start: number[]): boolean =>
  start.every((byte, i) => bytes[i] === byte);

const ascii = (bytes: Uint8Array, from: number, length: number): string =>
  String.fromCharCode(...bytes.subarray(from, from + length));

/** Signature, then the IHDR chunk: length, name, width, height (ISO/IEC 15948, 11.2.2; from memory). */
function png(view: DataView): PictureHeader {
  if (view.getUint32(12) !== 0x49484452) throw photoError(pictureWords.noPngHeader);
  return { type: "image/png", width: view.getUint32(16), height: view.getUint32(20) };
}

/** Walks the markers to the frame header SOFn: length, precision, height, width (ITU-T T.81, B.2.2; from memory). */
function jpeg(view: DataView): PictureHeader {
  let at = 2;
  for (;;) {
    if (view.getUint8(at) !== 0xff) throw photoError(pictureWords.noMarker);
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    const frame = marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
    if (frame) return { type: "image/jpeg", height: view.getUint16(at + 5), width: view.getUint16(at + 7) };
    const bare = marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8);
    at += bare ? 2 : 2 + view.getUint16(at + 2);
  }
}

/** The three forms of the first chunk: VP8X, VP8L, VP8 (RFC 9649, sections 2.5 to 2.7; from memory). */
function webp(view: DataView, bytes: Uint8Array): PictureHeader {
  const type = "image/webp";
  const chunk = ascii(bytes, 12, 4);
  if (chunk === "VP8X") {
    const side = (at: number) => 1 + view.getUint16(at, true) + (view.getUint8(at + 2) << 16);
    return { type, width: side(24), height: side(27) };
  }
  if (chunk === "VP8L") {
    const bits = view.getUint32(21, true);
    return { type, width: 1 + (bits & 0x3fff), height: 1 + ((bits >>> 14) & 0x3fff) };
  }
  if (chunk === "VP8 ") {
    return { type, width: view.getUint16(26, true) & 0x3fff, height: view.getUint16(28, true) & 0x3fff };
  }
  throw photoError(pictureWords.webpPart);
}
