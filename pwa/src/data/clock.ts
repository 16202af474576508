/**
 * The hybrid logical clock: S. Kulkarni, M. Demirbas, D. Madappa, B. Avva, M. Leone, "Logical Physical Clocks",
 * OPODIS 2014. A stamp is 12 hex digits of ms since epoch, 4 of counter, 16 of device; text order is time order.
 */

export interface Clock {
  /** ms since epoch */
  l: number;
  c: number;
}

export const ZERO: Clock = { l: 0, c: 0 };
const MAX_COUNTER = 0xffff;
/** The last ms of the year 9999: later ones are a fault, not a time. */
export const MAX_MS = 253_402_300_799_999;
/** How far ahead of the server's time a stamp may be, ms. */
export const FUTURE_BOUND_MS = 60_000;

const STAMP = /^[0-9a-f]{32}$/;
const DEVICE = /^[0-9a-f]{16}$/;
const NO_DEVICE = "0".repeat(16);

/** On overflow the counter carries into the time, never wraps. */
const carry = (l: number, c: number): Clock => (c > MAX_COUNTER ? { l: l + 1, c: 0 } : { l, c });

/** The reading for an own event; pt is the device's time, ms. */
export function tick(last: Clock, pt: number): Clock {
  const l = Math.max(last.l, Math.floor(pt));
  return l === last.l ? carry(l, last.c + 1) : { l, c: 0 };
}

/** The reading after seeing a remote one. */
export function observe(last: Clock, remote: Clock, pt: number): Clock {
  const l = Math.max(last.l, remote.l, Math.floor(pt));
  if (l === last.l && l === remote.l) return carry(l, Math.max(last.c, remote.c) + 1);
  if (l === last.l) return carry(l, last.c + 1);
  if (l === remote.l) return carry(l, remote.c + 1);
  return { l, c: 0 };
}

export const formatStamp = (clock: Clock, device: string): string =>
  clock.l.toString(16).padStart(12, "0") + clock.c.toString(16).padStart(4, "0") + device;

/** ms since epoch */
export const stampMs = (stamp: string): number => Number.parseInt(stamp.slice(0, 12), 16);
export const stampDevice = (stamp: string): string => stamp.slice(16);
export const stampClock = (stamp: string): Clock => ({
  l: stampMs(stamp),
  c: Number.parseInt(stamp.slice(12, 16), 16),
});

const isDevice = (text: unknown): text is string =>
  typeof text === "string" && DEVICE.test(text) && text !== NO_DEVICE;

export const isStamp = (text: unknown): text is string =>
  typeof text === "string" && STAMP.test(text) && isDevice(stampDevice(text)) && stampMs(text) <= MAX_MS;

export function laterStamp(a: string, b: string): string {
  if (a > b) return a;
  return b;
}

/** The stamp that is above all real ones of a ms; to compare "later than". */
export const endOfMs = (ms: number): string =>
  `${Math.floor(ms).toString(16).padStart(12, "0")}${"f".repeat(20)}`;

/** 64 random bits, never zero. */
export function newDevice(): string {
  for (;;) {
    const bytes = crypto.getRandomValues(new Uint8Array(8));
    const device = Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
    if (device !== NO_DEVICE) return device;
  }
}
