import type { JsonInput } from "../data/value.ts";
import type { Rubric, Shop } from "../generated/types.ts";
import { MoneyField, NumberField, SelectField, TextField, YearField } from "../parts/field.tsx";
import { Fold } from "../parts/fold.tsx";
import { saveValue } from "../parts/save.ts";
import type { ShopCatalogue } from "../parts/use-catalogue.ts";
import type { ListingDoc } from "../parts/use-listing.ts";
import { listingWords as words } from "../words/listing.ts";
import { QuantityField, sizeUnits } from "./capacity-field.tsx";
import { HoursField } from "./comparable-form.tsx";
import { SizeAndSupply } from "./listing-size.tsx";

export interface FieldsProps {
  listing: ListingDoc;
  catalogue: ShopCatalogue | undefined;
  rubric: Rubric | undefined;
  shop: Shop | undefined;
}

/** Saves one field of the listing under its own name. */
export const keeper = (listing: ListingDoc, path: string) => (value: JsonInput) =>
  saveValue(words.labels[path] ?? path, listing.doc, path, value);

/** Text emptied is text removed. */
const keepText = (listing: ListingDoc, path: string) => (text: string) =>
  keeper(listing, path)(text.trim() === "" ? null : text);

/** The listing's own facts, each kept as it is typed. */
export function ListingFields(props: FieldsProps) {
  const { listing, shop } = props;
  const text = (path: string) => ({
    id: `${listing.doc}/${path}`,
    value: listing.text(path),
    keep: keepText(listing, path),
  });
  return (
    <section class="block" aria-label={words.fields}>
      <h2 class="block-title">{words.fields}</h2>
      <TextField {...text("title")} label={words.titleField} hint={words.titleHint} />
      <MoneyField
        id={`${listing.doc}/asking`}
        label={words.asking}
        currency={shop?.currency ?? ""}
        cents={listing.number("asking")}
        keep={keeper(listing, "asking")}
      />
      <TextField {...text("place")} label={words.place} />
      <Sizes {...props} />
      <SizeAndSupply listing={listing} shop={shop} />
      <Fold summary={words.plate}>
        <TextField {...text("maker")} label={words.maker} />
        <TextField {...text("model")} label={words.model} />
        <TextField {...text("serial")} label={words.serial} />
      </Fold>
      <Fold summary={words.text}>
        <TextField {...text("seen")} label={words.seen} hint={words.seenHint} most={2000} />
        <TextField {...text("note")} label={words.note} hint={words.noteHint} lines={3} most={20_000} />
      </Fold>
    </section>
  );
}

function Sizes({ listing, catalogue, rubric, shop }: FieldsProps) {
  return (
    <>
      <div class="field-row">
        <QuantityField
          id={`${listing.doc}/distance`}
          label={words.distance}
          units={shop?.units === "metric" ? ["km", "mi"] : ["mi", "km"]}
          value={listing.quantity("distance")}
          zero
          most={20_000}
          keep={(q) => keeper(listing, "distance")(q && { ...q })}
        />
        <YearField
          id={`${listing.doc}/made`}
          label={words.made}
          value={listing.number("made")}
          keep={keeper(listing, "made")}
        />
        {rubric && (
          <QuantityField
            id={`${listing.doc}/capacity`}
            label={rubric.capacity.title}
            units={sizeUnits(rubric.capacity)}
            value={listing.quantity("capacity")}
            most={1e9}
            keep={(q) => keeper(listing, "capacity")(q && { ...q })}
          />
        )}
        <HoursField
          id={`${listing.doc}/hours`}
          value={listing.number("hours")}
          keep={keeper(listing, "hours")}
        />
        <EffectiveAgeField listing={listing} />
      </div>
      {catalogue && (
        <SelectField
          id={`${listing.doc}/seller`}
          label={words.seller}
          hint={words.sellerHint}
          value={listing.text("seller")}
          choices={catalogue.sellers}
          unset={words.notTold}
          keep={(id) => keeper(listing, "seller")(id === "" ? null : id)}
        />
      )}
    </>
  );
}

/** Age by condition and rebuilding, where it is not the years since it was made. */
export function EffectiveAgeField({ listing }: { listing: ListingDoc }) {
  return (
    <NumberField
      id={`${listing.doc}/effective_age`}
      label={words.effectiveAge}
      hint={words.effectiveAgeHint}
      value={listing.number("effective_age")}
      low={0.1}
      high={200}
      keep={keeper(listing, "effective_age")}
    />
  );
}
