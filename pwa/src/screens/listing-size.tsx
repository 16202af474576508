import { listingFigures } from "../data/file.ts";
import type { Json, JsonInput } from "../data/value.ts";
import type { Shop } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { saveValue } from "../parts/save.ts";
import type { ListingDoc } from "../parts/use-listing.ts";
import { listingWords as words } from "../words/listing.ts";
import { PhasesField } from "./phases-field.tsx";
import { SizeField } from "./size-field.tsx";
import { refusedChange } from "./use-check.ts";

/** Keeps a size of the listing, unless every judgement would refuse it. */
const keeper = (listing: ListingDoc, path: string) => async (value: JsonInput) => {
  const next = new Map(listing.values);
  if (value === null) next.delete(path);
  else next.set(path, value as Json);
  const why = await refusedChange(
    { listing: listingFigures(listing.values) },
    { listing: listingFigures(next) },
  );
  return why ?? saveValue(words.labels[path] ?? path, listing.doc, path, value);
};

const sizes = ["weight", "length", "width", "height", "power", "voltage", "current"];

/** What fit and way home go by: sizes, and what feeds it. */
export function SizeAndSupply({ listing, shop }: { listing: ListingDoc; shop: Shop | undefined }) {
  return (
    <Fold summary={words.size}>
      <p class="hint">{words.sizeHint}</p>
      <div class="field-row">
        {sizes.map((name) => (
          <SizeField
            key={name}
            field={`listing.${name}`}
            id={`${listing.doc}/${name}`}
            metric={shop?.units === "metric"}
            value={listing.quantity(name)}
            keep={(q) => keeper(listing, name)(q && { ...q })}
          />
        ))}
      </div>
      <PhasesField
        id={`${listing.doc}/phases`}
        label={words.phases}
        value={listing.number("phases")}
        keep={keeper(listing, "phases")}
      />
    </Fold>
  );
}
