/**
 * Reading a zip file part by part, each checked against its CRC-32 and its stated length, so that neither a
 * damaged nor an overfull file gets further. Layout: PKWARE APPNOTE 4.3.6 to 4.3.16, from memory.
 */
import { inflateSync } from "fflate";
import { archiveWords } from "../words/archive.ts";
import { DataError } from "./error.ts";

export interface ZipPart {
  name: string;
  /** Unpacked bytes. */
  size: number;
  read(): Promise<Uint8Array<ArrayBuffer>>;
}

const END = 0x06054b50;
const DIRECTORY = 0x02014b50;
const LOCAL = 0x04034b50;
const END_BYTES = 22;
const MAX_COMMENT = 0xffff;
const MAX_PARTS = 100_000;

export const broken = (what: string): DataError => new DataError("archive", archiveWords.broken(what));

/** The parts by name. Throws DataError for anything that is not a whole zip file. */
export async function openZip(file: Blob): Promise<Map<string, ZipPart>> {
  if (file.size === 0) throw broken(archiveWords.empty);
  try {
    return await readDirectory(file);
  } catch (cause) {
    if (cause instanceof RangeError) throw broken(archiveWords.contents);
    throw cause;
  }
}

async function readDirectory(file: Blob): Promise<Map<string, ZipPart>> {
  const tailAt = Math.max(0, file.size - END_BYTES - MAX_COMMENT);
  const tail = await view(file, tailAt, file.size);
  let at = tail.byteLength - END_BYTES;
  while (at >= 0 && tail.getUint32(at, true) !== END) at--;
  if (at < 0) throw broken(archiveWords.noEnd);
  const count = tail.getUint16(at + 10, true);
  const start = tail.getUint32(at + 16, true);
  const length = tail.getUint32(at + 12, true);
  if (count > MAX_PARTS || start + length > tailAt + at) throw broken(archiveWords.contents);
  const directory = await view(file, start, start + length);
  const parts = new Map<string, ZipPart>();
  for (let i = 0, p = 0; i < count; i++) {
    if (directory.getUint32(p, true) !== DIRECTORY) throw broken(archiveWords.contents);
    const names = directory.getUint16(p + 28, true);
    const name = new TextDecoder().decode(
      new Uint8Array(directory.buffer, directory.byteOffset + p + 46, names),
    );
    parts.set(name, partAt(file, name, directory, p));
    p += 46 + names + directory.getUint16(p + 30, true) + directory.getUint16(p + 32, true);
  }
  return parts;
}

function partAt(file: Blob, name: string, directory: DataView, p: number): ZipPart {
  const method = directory.getUint16(p + 10, true);
  const crc = directory.getUint32(p + 16, true);
  const packed = directory.getUint32(p + 20, true);
  const size = directory.getUint32(p + 24, true);
  const at = directory.getUint32(p + 42, true);
  return {
    name,
    size,
    async read() {
      const head = await view(file, at, at + 30);
      if (head.byteLength < 30 || head.getUint32(0, true) !== LOCAL) throw broken(archiveWords.damaged(name));
      const from = at + 30 + head.getUint16(26, true) + head.getUint16(28, true);
      const data = new Uint8Array(await file.slice(from, from + packed).arrayBuffer());
      const unpacked = unpack(data, method, size);
      if (unpacked === undefined || unpacked.length !== size || crc32(unpacked) !== crc) {
        throw broken(archiveWords.damaged(name));
      }
      return unpacked;
    },
  };
}

function unpack(
  data: Uint8Array<ArrayBuffer>,
  method: number,
  size: number,
): Uint8Array<ArrayBuffer> | undefined {
  if (method === 0) return data;
  if (method !== 8) return undefined;
  try {
    return inflateSync(data, { out: new Uint8Array(size) }) as Uint8Array<ArrayBuffer>;
  } catch {
    return undefined;
  }
}

async function view(file: Blob, from: number, to: number): Promise<DataView> {
  return new DataView(await file.slice(from, to).arrayBuffer());
}

const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c;
});

/** CRC-32 of ISO 3309, as in zip and PNG. */
export function crc32(data: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of data) crc = (CRC_TABLE[(crc ^ byte) & 0xff] ?? 0) ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}
