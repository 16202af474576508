import { useState } from "preact/hooks";
import { tieDownPath } from "../data/file-shop.ts";
import { integerOf, textOf } from "../data/shape.ts";
import { MoneyField, NumberField, SelectField } from "../parts/field.tsx";
import { shopWords as words } from "../words/shop.ts";
import { SharePercentField } from "./percent-field.tsx";
import { keeper, metric, type Own, Size } from "./shop-size.tsx";

/** What lifts it, and what a mile costs. */
export function Gear({ own }: { own: Own }) {
  const path = "haul/per_distance";
  const title = metric(own) ? words.perKilometre : words.perMile;
  return (
    <section class="block" aria-label={words.gear}>
      <h2 class="block-title">{words.gear}</h2>
      <Size own={own} field="haul.lifting" />
      <MoneyField
        id={`shop/${path}`}
        label={title}
        hint={words.perDistanceHint}
        currency={textOf(own.values.get("currency")) ?? own.catalogue.shop.currency}
        cents={integerOf(own.values.get(path))}
        keep={keeper(own, path, title)}
      />
    </section>
  );
}

/** The kinds the buyer has, each with its count, and one more to choose. */
export function TieDowns({ own }: { own: Own }) {
  const [added, setAdded] = useState<string[]>([]);
  const kinds = own.catalogue.tie_downs;
  const shown = kinds.filter(({ id }) => added.includes(id) || own.values.has(tieDownPath(id)));
  const rest = kinds.filter((kind) => !shown.includes(kind));
  return (
    <section class="block" aria-label={words.ties}>
      <h2 class="block-title">{words.ties}</h2>
      <p class="quiet">{words.tiesLead}</p>
      {shown.map(({ id, title }) => (
        <NumberField
          key={id}
          id={`shop/${tieDownPath(id)}`}
          label={words.tieCount(title)}
          value={integerOf(own.values.get(tieDownPath(id)))}
          low={0}
          high={1000}
          whole
          keep={keeper(own, tieDownPath(id), title)}
        />
      ))}
      <SelectField
        id="shop/haul/tie"
        label={words.addTie}
        value=""
        choices={rest}
        unset={words.addTiePick}
        keep={(kind) => {
          if (kind !== "") setAdded([...added, kind]);
          return undefined;
        }}
      />
    </section>
  );
}

/** How prices of the region stand to the examples. */
export function Region({ own }: { own: Own }) {
  return (
    <section class="block" aria-label={words.region}>
      <h2 class="block-title">{words.region}</h2>
      <p class="quiet">{words.regionLead}</p>
      <SharePercentField
        id="shop/region"
        label={words.regionField}
        points={integerOf(own.values.get("region"))}
        low={1}
        high={1000}
        keep={keeper(own, "region", words.region)}
      />
    </section>
  );
}
