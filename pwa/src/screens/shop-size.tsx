import { shopSettings } from "../data/file.ts";
import type { Values } from "../data/reader.ts";
import { quantityOf, textOf } from "../data/shape.ts";
import type { JsonInput } from "../data/value.ts";
import type { Catalogue } from "../generated/types.ts";
import { shopWords as words } from "../words/shop.ts";
import { keepChecked } from "./keep-checked.ts";
import { SizeField } from "./size-field.tsx";

/** What is kept of the shop, and what the engine knows of such things. */
export interface Own {
  catalogue: Catalogue;
  values: Values;
}

/** Keeps one value of the shop, unless every judgement would refuse it. */
export const keeper = (own: Own, path: string, title: string) => (value: JsonInput) =>
  keepChecked({ label: words.saveLabel(title), doc: "shop", path }, value, (values) => ({
    shop: shopSettings(values, own.catalogue.shop).shop,
  }));

export const metric = (own: Own) =>
  (textOf(own.values.get("units")) ?? own.catalogue.shop.units) === "metric";

/** One size, kept at its field's name with slashes. */
export function Size({ own, field }: { own: Own; field: string }) {
  const path = field.replaceAll(".", "/");
  return (
    <SizeField
      field={field}
      id={`shop/${path}`}
      metric={metric(own)}
      value={quantityOf(own.values.get(path))}
      keep={(q) => keeper(own, path, words.sizes[field]?.label ?? field)(q && { ...q })}
    />
  );
}
