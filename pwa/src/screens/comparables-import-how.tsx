import type { Import, ImportChoice, Rubric } from "../generated/types.ts";
import { ChoiceField, SelectField } from "../parts/field.tsx";
import { comparablesWords } from "../words/comparables.ts";
import { importWords as words } from "../words/import.ts";
import { sizeUnits } from "./capacity-field.tsx";

/** What was taken for the whole table, each with a switch where it could be otherwise. */
export function ImportHow(props: {
  found: Import;
  rubric: Rubric | undefined;
  busy: boolean;
  choose: (change: ImportChoice) => void;
}) {
  const { found, rubric, choose } = props;
  const has = (field: string) => found.columns.some((column) => column.field === field);
  const said = (change: ImportChoice) => {
    choose(change);
    return undefined;
  };
  return (
    <fieldset class="block" disabled={props.busy}>
      <legend class="seen-by-reader">{words.how}</legend>
      <h2 class="block-title">{words.how}</h2>
      <p>{words.separators[found.separator] ?? found.separator}</p>
      <ChoiceField
        id="import/decimal"
        label={words.decimal}
        value={found.decimal_comma ? "comma" : "point"}
        choices={[
          { id: "point", title: words.decimalPoint },
          { id: "comma", title: words.decimalComma },
        ]}
        keep={(id) => said({ decimal_comma: id === "comma" })}
      />
      {has("date") && (
        <ChoiceField
          id="import/days"
          label={words.days}
          value={found.day_first ? "day" : "month"}
          choices={[
            { id: "day", title: words.dayFirst },
            { id: "month", title: words.monthFirst },
          ]}
          keep={(id) => said({ day_first: id === "day" })}
        />
      )}
      <ChoiceField
        id="import/basis"
        label={words.basis}
        value={found.basis}
        choices={comparablesWords.bases}
        keep={(basis) => said({ basis })}
        row
      />
      {rubric && has("capacity") && (
        <SelectField
          id="import/unit"
          label={words.unit(rubric.capacity.title)}
          value={found.unit}
          choices={sizeUnits(rubric.capacity).map((unit) => ({ id: unit, title: unit }))}
          keep={(unit) => said({ unit })}
        />
      )}
    </fieldset>
  );
}
