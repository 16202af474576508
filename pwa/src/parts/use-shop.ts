import { useMemo } from "preact/hooks";
import { shopSettings } from "../data/file.ts";
import type { Shop } from "../generated/types.ts";
import { useCatalogue } from "./use-catalogue.ts";
import { useDoc } from "./use-listing.ts";

/** The shop's settings over the engine's defaults, live. */
export function useShop(): Shop | undefined {
  const catalogue = useCatalogue();
  const stored = useDoc("shop");
  return useMemo(
    () => (catalogue && stored ? shopSettings(stored.values, catalogue.shop).shop : undefined),
    [catalogue, stored],
  );
}
