import { listingFigures } from "../data/file.ts";
import type { JsonInput } from "../data/value.ts";
import type { Shop } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import type { ListingDoc } from "../parts/use-listing.ts";
import { listingWords as words } from "../words/listing.ts";
import { keepChecked } from "./keep-checked.ts";
import { PhasesField } from "./phases-field.tsx";
import { SizeField } from "./size-field.tsx";

/** Keeps a size of the listing, unless every judgement would refuse it. */
const keeper = (listing: ListingDoc, path: string) => (value: JsonInput) =>
  keepChecked({ label: words.labels[path] ?? path, doc: listing.doc, path }, value, (values) => ({
    listing: listingFigures(values),
  }));

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
