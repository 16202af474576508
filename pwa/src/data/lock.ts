/** One after another, over all tabs of the origin; without the Web Locks API over this page only. */

const tails = new Map<string, Promise<unknown>>();

/** Runs work alone under the name. */
export function alone<T>(name: string, work: () => Promise<T>): Promise<T> {
  const locks = webLocks();
  if (locks) return locks.request(name, work) as Promise<T>;
  const turn = (tails.get(name) ?? Promise.resolve()).then(work);
  tails.set(
    name,
    turn.catch(() => undefined),
  );
  return turn;
}

const held = new Set<string>();

/** Runs work unless somebody else is at it; then undefined. */
export async function aloneOrNot<T>(name: string, work: () => Promise<T>): Promise<T | undefined> {
  const locks = webLocks();
  if (locks) {
    return (await locks.request(name, { ifAvailable: true }, (lock) => (lock ? work() : undefined))) as
      | T
      | undefined;
  }
  if (held.has(name)) return undefined;
  held.add(name);
  try {
    return await work();
  } finally {
    held.delete(name);
  }
}

const webLocks = (): LockManager | undefined =>
  typeof navigator === "undefined" ? undefined : (navigator.locks ?? undefined);
