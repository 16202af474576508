import fc from "fast-check";
import { expect, it } from "vitest";
import { swarm } from "./swarm.ts";

it("leaves a lone dot on the line and parts two of one price", () => {
  expect(swarm([{ x: 50, r: 5 }], 30)).toEqual([{ x: 50, r: 5, y: 0 }]);
  const [a, b] = swarm(
    [
      { x: 50, r: 5 },
      { x: 50, r: 5 },
    ],
    30,
  );
  expect([a?.y, b?.y]).toEqual([0, -10]);
});

it("never lets two touch while there is room, and never leaves the lane", () => {
  const spot = fc.record({ x: fc.integer({ min: 0, max: 300 }), r: fc.integer({ min: 2, max: 8 }) });
  fc.assert(
    fc.property(fc.array(spot, { maxLength: 12 }), (spots) => {
      const placed = swarm(spots, 200);
      for (const [i, p] of placed.entries()) {
        for (const q of placed.slice(i + 1)) {
          expect(Math.hypot(p.x - q.x, p.y - q.y)).toBeGreaterThanOrEqual(p.r + q.r - 1e-3);
        }
      }
      for (const p of swarm(spots, 20)) expect(Math.abs(p.y)).toBeLessThanOrEqual(20);
    }),
  );
});
