/**
 * Pixel scales of the charts. Pure: money and odds come from the engine as they
 * are, this only says where on the paper they stand.
 */

export interface Scale {
  (value: number): number;
  readonly domain: readonly [number, number];
  readonly range: readonly [number, number];
}

/** Straight-line scale. A domain of no width maps everything to the range's start. */
export function linear(domain: readonly [number, number], range: readonly [number, number]): Scale {
  const span = domain[1] - domain[0];
  const at = (value: number) =>
    span === 0 ? range[0] : range[0] + ((value - domain[0]) / span) * (range[1] - range[0]);
  return Object.assign(at, { domain, range });
}

/** The smallest of 1, 2, 2.5 or 5 times a power of ten that cuts the span in at most `count` pieces. */
export function niceStep(span: number, count: number): number {
  if (!(span > 0) || !(count >= 1) || !Number.isFinite(span)) return 1;
  const rough = span / count;
  const power = 10 ** Math.floor(Math.log10(rough));
  // A hair of tolerance, so that 0.3/3 counts as 0.1.
  const factor = [1, 2, 2.5, 5, 10].find((f) => f * power >= rough * (1 - 1e-9)) ?? 10;
  return factor * power;
}

/** Round values inside [low, high], at most count + 1 of them, ascending. */
export function niceTicks(low: number, high: number, count: number): number[] {
  if (!Number.isFinite(low) || !Number.isFinite(high) || high < low) return [];
  if (high === low) return [low];
  const step = niceStep(high - low, count);
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  const ticks: number[] = [];
  for (let i = first; i <= last; i++) ticks.push(Number((i * step).toPrecision(12)) + 0);
  return ticks;
}

/** A domain that holds every value and zero, ending on round numbers. */
export function niceDomain(values: readonly number[], count: number): [number, number] {
  const known = values.filter(Number.isFinite);
  const low = Math.min(0, ...known);
  const high = Math.max(0, ...known);
  if (low === high) return [0, 1];
  const step = niceStep(high - low, count);
  return [Math.floor(low / step + 1e-9) * step + 0, Math.ceil(high / step - 1e-9) * step + 0];
}

/** A domain that holds every value and ends on round numbers, zero not forced in. */
export function niceSpan(values: readonly number[], count: number): [number, number] {
  const known = values.filter(Number.isFinite);
  if (known.length === 0) return [0, 1];
  const [low, high] = [Math.min(...known), Math.max(...known)];
  const step = niceStep(high === low ? Math.abs(low) / 2 : high - low, count);
  const [from, to] = [Math.floor(low / step + 1e-9) * step + 0, Math.ceil(high / step - 1e-9) * step + 0];
  return from === to ? [from - step, to + step] : [from, to];
}

/** Breadth of a text in pixels, on the wide side, for condensed sans and for figures. */
export function textWidth(text: string, size: number): number {
  let em = 0;
  for (const c of text) {
    if (/\p{M}/u.test(c)) continue;
    if (/[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}]/u.test(c)) em += 1;
    else if (/[il.,:;'|!\s]/.test(c)) em += 0.32;
    else if (/[mwMW@%]/.test(c)) em += 0.86;
    else em += 0.6;
  }
  return em * size;
}

/** The start of a text of this breadth wanted centred at `centre`, pushed inside [low, high]. */
export function within(centre: number, breadth: number, low: number, high: number): number {
  const start = centre - breadth / 2;
  return Math.max(low, Math.min(start, high - breadth));
}

/** A tick with the middle of its label, in pixels. */
export interface Label {
  tick: number;
  middle: number;
}

/**
 * Labels of an axis, each centred on its tick where the paper [low, high] allows;
 * those that would come nearer than `gap` pixels to the one before are left out.
 */
export function axisLabels(
  ticks: readonly number[],
  at: Scale,
  breadth: (tick: number) => number,
  paper: readonly [number, number],
  gap: number,
): Label[] {
  const kept: Label[] = [];
  let edge = Number.NEGATIVE_INFINITY;
  for (const tick of ticks) {
    const wide = breadth(tick);
    const start = within(at(tick), wide, paper[0], paper[1]);
    if (start < edge + gap) continue;
    kept.push({ tick, middle: start + wide / 2 });
    edge = start + wide;
  }
  return kept;
}

/** Where a dimension's text stands: on its line where it fits, else beyond its far end, else before the right edge. */
export function onDimension(
  from: number,
  to: number,
  breadth: number,
  right: number,
): { x: number; inside: boolean } {
  const pad = 8;
  if (to - from >= breadth + 3 * pad) return { x: (from + to - breadth) / 2, inside: true };
  return { x: Math.max(from, Math.min(to + pad, right - breadth)), inside: false };
}
