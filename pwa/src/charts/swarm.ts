/** Dots on one line that must not hide each other: only where they stand, nothing of what they mean. */

export interface Spot {
  /** Middle, pixels. */
  x: number;
  /** pixels */
  r: number;
}

export interface Placed extends Spot {
  /** Above (negative) or below the line, pixels. */
  y: number;
}

/**
 * Puts each dot as near to the line as those placed before it allow, trying above and
 * below in turn, at most `reach` away; where there is no room left it covers as little as it can.
 */
export function swarm<T extends Spot>(spots: readonly T[], reach: number): (T & Placed)[] {
  const placed: (T & Placed)[] = [];
  for (const spot of spots) {
    const near = placed.filter((p) => Math.abs(p.x - spot.x) < p.r + spot.r);
    const room = (y: number) =>
      Math.min(...near.map((p) => Math.hypot(p.x - spot.x, p.y - y) - p.r - spot.r));
    let best = { y: 0, room: room(0) };
    for (let step = 1; best.room < -1e-6 && step <= 2 * reach; step++) {
      const y = (step % 2 === 0 ? 1 : -1) * Math.ceil(step / 2);
      const here = room(y);
      if (here > best.room) best = { y, room: here };
    }
    placed.push({ ...spot, y: best.y });
  }
  return placed;
}
