/** For tests: several devices in one process, and pictures made of headers. */
import Dexie from "dexie";
import { IDBFactory, IDBKeyRange } from "fake-indexeddb";
import { Store, useStore } from "./db.ts";
import { rowText } from "./row.ts";
import { crc32 } from "./zip.ts";

let count = 0;

/** A device of its own; it becomes the current one. */
export async function newStore(): Promise<Store> {
  const indexedDB = new IDBFactory();
  Object.assign(Dexie.dependencies, { indexedDB, IDBKeyRange });
  const store = new Store(`test-${++count}`, { indexedDB, IDBKeyRange });
  await store.open();
  return useStore(store);
}

/** Does work as that device. */
export function as<T>(store: Store, work: () => Promise<T>): Promise<T> {
  useStore(store);
  return work();
}

/** Two devices' stamps of one millisecond are ordered by chance: waits for the next one. */
export async function nextMs(): Promise<void> {
  const now = Date.now();
  while (Date.now() <= now) await new Promise((resolve) => setTimeout(resolve, 1));
}

export const texts = async (store: Store): Promise<string[]> =>
  (await store.rows.toArray()).map(rowText).sort();

const ascii = (text: string): number[] => [...text].map((c) => c.charCodeAt(0));
const u32 = (n: number): number[] => [n >>> 24, (n >>> 16) & 255, (n >>> 8) & 255, n & 255];

/** A PNG header with these dimensions, and `filling` bytes after it. */
export function png(width: number, height: number, filling = 0): Uint8Array<ArrayBuffer> {
  const head = [...ascii("IHDR"), ...u32(width), ...u32(height), 8, 2, 0, 0, 0];
  const start = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, ...u32(13), ...head];
  const all = new Uint8Array(start.length + 4 + filling);
  all.set([...start, ...u32(crc32(new Uint8Array(head)))]);
  for (let i = start.length + 4; i < all.length; i++) all[i] = (i * 31) & 255;
  return all;
}

/** A JPEG start with an application segment before the frame header. */
export function jpeg(width: number, height: number): Uint8Array<ArrayBuffer> {
  const frame = [0xff, 0xc0, 0, 17, 8, height >> 8, height & 255, width >> 8, width & 255, 3];
  return new Uint8Array([0xff, 0xd8, 0xff, 0xe1, 0, 6, 1, 2, 3, 4, ...frame, 0, 0, 0, 0, 0, 0, 0, 0, 0]);
}

/** An extended WebP header. */
export function webp(width: number, height: number): Uint8Array<ArrayBuffer> {
  const le24 = (n: number) => [n & 255, (n >> 8) & 255, (n >> 16) & 255];
  const body = [...ascii("VP8X"), 10, 0, 0, 0, 0, 0, 0, 0, ...le24(width - 1), ...le24(height - 1)];
  return new Uint8Array([...ascii("RIFF"), 22, 0, 0, 0, ...ascii("WEBP"), ...body]);
}

export const heic = (): Uint8Array<ArrayBuffer> =>
  new Uint8Array([0, 0, 0, 24, ...ascii("ftypheic"), 0, 0, 0, 0, ...ascii("mif1heic")]);
