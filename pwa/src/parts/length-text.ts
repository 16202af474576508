/** Lengths on a photo as they are written there. */
import type { LengthTexts } from "../data/photo-marks.ts";
import { locale as spoken } from "../words/tongue.ts";

/** What was measured stands with what it may be off by, rounded to that: ≈ 3.4 ± 0.2 in. */
export function lengthTexts(locale: string = spoken()): LengthTexts {
  return {
    scale: ({ n, unit }) => `${figure(n, 4, locale)} ${unit}`,
    measured: ({ n, give, unit }) => {
      if (!(give > 0)) return `≈ ${figure(n, 4, locale)} ${unit}`;
      const step = 10 ** Math.floor(Math.log10(give));
      const decimals = Math.min(6, Math.max(0, -Math.floor(Math.log10(give))));
      // The doubt is never rounded down.
      const doubt = Math.ceil(give / step - 1e-9) * step;
      const near = Math.round(n / step) * step;
      return `≈ ${figure(near, decimals, locale)} ± ${figure(doubt, decimals, locale)} ${unit}`;
    },
  };
}

const figure = (n: number, decimals: number, locale: string): string =>
  new Intl.NumberFormat(locale, { maximumFractionDigits: decimals }).format(n);
