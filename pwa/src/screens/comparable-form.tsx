import type { Catalogue, Shop } from "../generated/types.ts";
import { ChoiceField, MoneyField, NumberField, SelectField, TextField, YearField } from "../parts/field.tsx";
import { save, saveValue } from "../parts/save.ts";
import { useWhole } from "../parts/use-whole.ts";
import { comparablesWords as words } from "../words/comparables.ts";
import { QuantityField, sizeUnits } from "./capacity-field.tsx";
import { type Item, itemValue } from "./comparable-item.ts";
import { DateField } from "./date-field.tsx";

/**
 * The fields of one comparable. Every change keeps the whole of it as one value;
 * a new one is first kept with its first entry.
 */
export function ComparableForm(props: {
  item: Item;
  catalogue: Catalogue;
  shop: Shop;
  /** Whether anything of it is kept yet. */
  kept: boolean;
  onKept?: (item: Item) => void;
  onRemoved: () => void;
}) {
  const { item, catalogue, shop } = props;
  const latest = useWhole(item);
  const set = async (change: Partial<Item>): Promise<string | undefined> => {
    latest.current = { ...latest.current, ...change };
    const problem = await saveValue(
      words.setItem,
      "comparables",
      `item/${item.id}`,
      itemValue(latest.current),
    );
    if (!problem) props.onKept?.(latest.current);
    return problem;
  };
  const drop = (name: "made" | "capacity" | "hours" | "distance") => {
    const { [name]: _, ...rest } = latest.current;
    latest.current = rest as Item;
    return set({});
  };
  const key = (name: string) => `comparables/${item.id}/${name}`;
  const rubric = catalogue.rubrics.find((r) => r.id === item.kind);
  const kinds = catalogue.rubrics.map((r) => ({ id: r.id, title: r.kind }));
  return (
    <div class="block">
      <TextField
        id={key("title")}
        label={words.title_}
        hint={words.titleHint}
        value={item.title}
        keep={(title) => set({ title: title.trim() })}
      />
      <TextField
        id={key("maker")}
        label={words.maker}
        hint={words.makerHint}
        value={item.maker ?? ""}
        keep={(maker) => set({ maker: maker.trim() })}
      />
      <MoneyField
        id={key("price")}
        label={words.price}
        cents={item.price === 0 ? undefined : item.price}
        currency={shop.currency}
        keep={(price) => set({ price: price ?? 0 })}
      />
      <ChoiceField
        id={key("basis")}
        label={words.basis}
        value={item.basis}
        choices={words.bases}
        keep={(basis) => set({ basis })}
        row
      />
      <div class="field-row">
        <DateField
          label={words.date}
          hint={words.dateHint}
          value={item.date ?? ""}
          keep={(date) => set({ date })}
        />
        <YearField
          id={key("made")}
          label={words.made}
          hint={words.madeHint}
          value={item.made}
          keep={(made) => (made === null ? drop("made") : set({ made }))}
        />
      </div>
      <div class="field-row">
        {rubric && (
          <QuantityField
            id={key("capacity")}
            label={rubric.capacity.title}
            units={sizeUnits(rubric.capacity)}
            value={item.capacity}
            most={1e9}
            keep={(capacity) => (capacity ? set({ capacity }) : drop("capacity"))}
          />
        )}
        <HoursField
          id={key("hours")}
          value={item.hours}
          keep={(hours) => (hours ? set({ hours }) : drop("hours"))}
        />
      </div>
      <div class="field-row">
        <SelectField
          id={key("condition")}
          label={words.condition}
          value={item.condition ?? ""}
          choices={catalogue.conditions}
          unset={words.unset}
          keep={(condition) => set({ condition })}
        />
        <SelectField
          id={key("complete")}
          label={words.complete}
          value={item.complete ?? ""}
          choices={catalogue.completeness}
          unset={words.unset}
          keep={(complete) => set({ complete })}
        />
      </div>
      <div class="field-row">
        <TextField
          id={key("place")}
          label={words.place}
          value={item.place ?? ""}
          keep={(place) => set({ place })}
        />
        <QuantityField
          id={key("distance")}
          label={words.distance}
          units={shop.units === "metric" ? ["km", "mi"] : ["mi", "km"]}
          value={item.distance}
          zero
          most={20_000}
          keep={(distance) => (distance ? set({ distance }) : drop("distance"))}
        />
      </div>
      <TextField
        id={key("seen")}
        label={words.seen}
        hint={words.seenHint}
        value={item.seen ?? ""}
        keep={(where) => set({ seen: where })}
      />
      <TextField
        id={key("note")}
        label={words.note}
        value={item.note ?? ""}
        lines={2}
        most={20_000}
        keep={(note) => set({ note })}
      />
      <SelectField
        id={key("kind")}
        label={words.kind}
        value={item.kind}
        choices={kinds}
        keep={(kind) => set({ kind })}
      />
      <label class="choice-item">
        <input
          type="checkbox"
          checked={!item.off}
          onChange={(e) => void set({ off: !e.currentTarget.checked })}
        />
        <span>{words.count}</span>
      </label>
      <button
        type="button"
        class="button button-away"
        onClick={async () => {
          if (!props.kept) return props.onRemoved();
          const problem = await save(words.removed, [
            { doc: "comparables", path: `item/${item.id}`, value: null },
          ]);
          if (!problem) props.onRemoved();
        }}
      >
        {words.remove}
      </button>
    </div>
  );
}

/** Hours run; emptied they are removed (null). */
export function HoursField(props: {
  id: string;
  value: number | undefined;
  keep: (hours: number | null) => Promise<string | undefined>;
}) {
  return <NumberField {...props} label={words.hours} hint={words.hoursHint} low={0} high={1_000_000} />;
}
