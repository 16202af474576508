import { plain } from "../charts/format.ts";
import { isRecord, numberOf, quantityOf, rangeOf, textOf } from "../data/shape.ts";
import type { Json } from "../data/value.ts";
import { NumberField, TextField } from "../parts/field.tsx";
import { Fold } from "../parts/fold.tsx";
import { RangeInput } from "../parts/range-input.tsx";
import type { ListingDoc } from "../parts/use-listing.ts";
import { full, useMembers } from "../parts/use-members.ts";
import { worthWords as words } from "../words/worth.ts";
import { QuantityField, sizeUnits } from "./capacity-field.tsx";
import type { Lookup } from "./rubric-lookup.ts";

/** The price of a new equivalent with its size, its source, and the index that brings it to today. */
export function NewPriceEntry(props: { listing: ListingDoc; currency: string; lookup: Lookup }) {
  const { listing, currency, lookup } = props;
  const { members, keep } = useMembers(listing, "newprice", words.setNewPrice);
  const price = rangeOf(members.price);
  const size = lookup.rubric?.capacity;
  const id = `${listing.doc}/newprice`;
  return (
    <div class="block">
      <RangeInput
        id={id}
        label={words.newPrice}
        hint={words.newPriceHint}
        currency={currency}
        range={price}
        keep={(range) => keep(range && { price: { ...range } })}
      />
      {price && size && (
        <QuantityField
          id={`${id}-capacity`}
          label={words.newCapacity(size.title)}
          hint={words.newCapacityHint}
          units={sizeUnits(size)}
          value={quantityOf(members.capacity)}
          most={1e9}
          keep={(quantity) => keep({ capacity: quantity && { ...quantity } })}
        />
      )}
      {price && (
        <>
          <TextField
            id={`${id}-seen`}
            label={words.newSeen}
            value={textOf(members.seen) ?? ""}
            keep={(text) => keep({ seen: text.trim() })}
          />
          <IndexFold
            id={`${id}-index`}
            index={isRecord(members.index) ? members.index : {}}
            keep={(change) =>
              keep((now) => {
                const index = full({ ...(isRecord(now.index) ? now.index : {}), ...change });
                return { index: Object.keys(index).length > 0 ? index : null };
              })
            }
          />
        </>
      )}
    </div>
  );
}

function IndexFold(props: {
  id: string;
  index: { [name: string]: Json };
  keep: (change: { [name: string]: Json }) => Promise<string | undefined>;
}) {
  const { id, index, keep } = props;
  const [then, now] = [numberOf(index.then), numberOf(index.now)];
  const both = then !== undefined && now !== undefined;
  const figure = (name: "then" | "now", label: string, value: number | undefined) => (
    <NumberField
      id={`${id}-${name}`}
      label={label}
      value={value}
      low={0.0001}
      high={1e9}
      keep={(n) => keep({ [name]: n })}
    />
  );
  return (
    <Fold summary={words.index} aside={both ? words.indexAside(plain(then), plain(now)) : undefined}>
      <p class="hint">{words.indexHint}</p>
      <TextField
        id={`${id}-series`}
        label={words.indexSeries}
        hint={words.indexSeriesHint}
        value={textOf(index.series) ?? ""}
        keep={(series) => keep({ series: series.trim() })}
      />
      <div class="field-row">
        {figure("then", words.indexThen, then)}
        {figure("now", words.indexNow, now)}
      </div>
      {!both && (then !== undefined || now !== undefined) && <p class="hint">{words.indexHalf}</p>}
    </Fold>
  );
}
