import type { Measure, Quantity } from "../generated/types.ts";
import { QuantityInput } from "../parts/quantity-input.tsx";
import { useCatalogue } from "../parts/use-catalogue.ts";
import { shopWords as words } from "../words/shop.ts";

/** Units offered: the measure's own for these units first, then the other. */
const unitsOf = (measure: Measure, metric: boolean): string[] => {
  const [first, second] = metric ? [measure.metric, measure.unit] : [measure.unit, measure.metric];
  return first === second ? [first] : [first, second];
};

/** A size as the engine names it: which units it may have and what it can be is the engine's to say. */
export function SizeField(props: {
  /** listing.NAME, site.NAME or haul.NAME */
  field: string;
  id: string;
  metric: boolean;
  value: Quantity | undefined;
  keep: (value: Quantity | null) => Promise<string | undefined>;
}) {
  const measure = useCatalogue()?.measures.find((m) => m.field === props.field);
  if (!measure) return null;
  const named = words.sizes[props.field];
  return (
    <QuantityInput
      id={props.id}
      label={named?.label ?? props.field}
      hint={named?.hint}
      dimension={measure.dimension}
      units={unitsOf(measure, props.metric)}
      value={props.value}
      keep={props.keep}
    />
  );
}
