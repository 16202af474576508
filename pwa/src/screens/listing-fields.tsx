import type { JsonInput } from "../data/value.ts";
import type { Catalogue, Rubric, Shop } from "../generated/types.ts";
import { MoneyField, NumberField, SelectField, TextField } from "../parts/field.tsx";
import { Fold } from "../parts/fold.tsx";
import { saveValue } from "../parts/save.ts";
import type { ListingDoc } from "../parts/use-listing.ts";
import { listingWords as words } from "../words/listing.ts";

export interface FieldsProps {
  listing: ListingDoc;
  catalogue: Catalogue | undefined;
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
      <Fold summary={words.plate}>
        <TextField {...text("maker")} label={words.maker} />
        <TextField {...text("model")} label={words.model} />
        <TextField {...text("serial")} label={words.serial} />
      </Fold>
      <Fold summary={words.text}>
        <TextField {...text("seen")} label={words.seen} hint={words.seenHint} most={2000} />
        <TextField {...text("text")} label={words.listingText} lines={4} most={20_000} />
        <TextField {...text("note")} label={words.note} hint={words.noteHint} lines={3} most={20_000} />
      </Fold>
    </section>
  );
}

function Sizes({ listing, catalogue, rubric, shop }: FieldsProps) {
  const distance = listing.quantity("distance");
  const far = distance?.unit ?? (shop?.units === "metric" ? "km" : "mi");
  const capacity = listing.quantity("capacity");
  return (
    <>
      <div class="field-row">
        <NumberField
          id={`${listing.doc}/distance`}
          label={words.distance(far)}
          value={distance?.n}
          low={0}
          high={20_000}
          keep={(n) => keeper(listing, "distance")(n === null ? null : { n, unit: far })}
        />
        <NumberField
          id={`${listing.doc}/made`}
          label={words.made}
          value={listing.number("made")}
          low={1800}
          high={2200}
          whole
          keep={keeper(listing, "made")}
        />
        {rubric && (
          <NumberField
            id={`${listing.doc}/capacity`}
            label={words.capacity(rubric.capacity.title, capacity?.unit ?? rubric.capacity.unit)}
            value={capacity?.n}
            low={0.001}
            high={1e9}
            keep={(n) =>
              keeper(
                listing,
                "capacity",
              )(n === null ? null : { n, unit: capacity?.unit ?? rubric.capacity.unit })
            }
          />
        )}
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
