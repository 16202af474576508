import { niceDomain, niceSpan } from "./scale.ts";

/** So near to one another that a scale from zero would lay one upon the other. */
const near = 0.85;

/** What a scale holds a value and its limit on: from zero, or closer where that would not part them. */
export function limitSpan(value: number, limit: number): [number, number] {
  const [low, high] = [Math.min(value, limit), Math.max(value, limit)];
  const oneSided = low > 0 || high < 0;
  const ratio = low > 0 ? low / high : high / low;
  // Room beyond, so that neither stands at the edge.
  if (!oneSided || ratio < near) return niceDomain([low * 1.1, high * 1.1], 4);
  const room = high === low ? Math.abs(high) / 4 : (high - low) / 2;
  return niceSpan([low - room, high + room], 4);
}

/**
 * On which side of the limit it is passed: 1 above it, -1 below it, 0 where the
 * finding does not tell.
 */
export function passedSide(value: number, limit: number, finding: string): -1 | 0 | 1 {
  if (value === limit) return 0;
  const above = value > limit ? 1 : -1;
  if (finding === "beyond limit") return above;
  return finding === "within limit" ? (-above as -1 | 1) : 0;
}
