import { useMemo } from "preact/hooks";
import { rangeOf } from "../data/shape.ts";
import type { Range } from "../generated/types.ts";
import { useCatalogue } from "../parts/use-catalogue.ts";
import { useDoc } from "../parts/use-listing.ts";
import { useShop } from "../parts/use-shop.ts";

/** What a part costs: the shop's own price, or the example of the book. */
export interface PartPrice {
  title: string;
  unit: string;
  price: Range;
  own: boolean;
  currency: string;
  /** Date of the examples. */
  dated: string;
}

/** Looks parts of the price book up by id; undefined for what is not in it. */
export function usePartPrice(): (id: string) => PartPrice | undefined {
  const catalogue = useCatalogue();
  const shop = useShop();
  const book = useDoc("book");
  return useMemo(
    () => (id: string) => {
      const part = catalogue?.parts.find((p) => p.id === id);
      if (!catalogue || !shop || !part) return undefined;
      const own = rangeOf(book?.values.get(`part/${id}`) ?? null);
      return {
        title: part.title,
        unit: part.unit,
        price: own ?? part.price,
        own: own !== undefined,
        currency: shop.currency,
        dated: catalogue.parts_dated,
      };
    },
    [catalogue, shop, book],
  );
}
