/** The two meta rows. Every function here runs inside a transaction that holds `meta`. */
import { type Clock, newDevice, observe, stampClock } from "./clock.ts";
import type { DeviceMeta, Store, SyncMeta } from "./db.ts";

/** This device; made at first use, in the transaction of the first entry. */
export async function readDevice(store: Store): Promise<DeviceMeta> {
  const found = await store.meta.get("device");
  return found?.key === "device" ? found : { key: "device", id: newDevice(), l: 0, c: 0, offset: 0 };
}

export async function readSync(store: Store): Promise<SyncMeta> {
  const found = await store.meta.get("sync");
  return found?.key === "sync"
    ? found
    : { key: "sync", epoch: "", seq: 0, mark: "", sent: "", repush: null, repushRun: 0, contact: 0 };
}

/** Every row is to be pushed again, whole, from the first one on. */
export const repushAll = (sync: SyncMeta): SyncMeta => ({
  ...sync,
  repush: "",
  repushRun: sync.repushRun + 1,
});

/** The device's time corrected by the server's, ms since epoch. */
export const physical = (device: DeviceMeta): number => Math.max(0, Date.now() + device.offset);

/** Lifts the clock above everything seen. */
export function lift(device: DeviceMeta, stamps: Iterable<string>): DeviceMeta {
  let highest = "";
  for (const stamp of stamps) if (stamp > highest) highest = stamp;
  if (highest === "") return device;
  const clock: Clock = observe(device, stampClock(highest), physical(device));
  return { ...device, ...clock };
}
