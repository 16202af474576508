import type { Shop } from "../generated/types.ts";

/** Invented settings. */
export const shop: Shop = {
  currency: "USD",
  units: "inch",
  rates: { own: 3000, electrician: 9500 },
  tax: 0,
  fees: 0,
  odds: { opening: 9000, fair: 7500, walk_away: 5000 },
  overrun: { mean: 11000, sd: 2500 },
  kept: 5000,
};
