import { locale as spoken } from "../words/tongue.ts";

const steps = ["byte", "kilobyte", "megabyte", "gigabyte"] as const;

/** A size for reading, in steps of 1000: 12 MB. */
export function bytesText(bytes: number): string {
  let n = bytes;
  let step = 0;
  while (n >= 1000 && step < steps.length - 1) {
    n /= 1000;
    step++;
  }
  return new Intl.NumberFormat(spoken(), {
    style: "unit",
    unit: steps[step] ?? "byte",
    unitDisplay: "short",
    maximumFractionDigits: n < 10 && step > 0 ? 1 : 0,
  }).format(n);
}
