import type { Import, ImportChoice } from "../generated/types.ts";
import { SelectField } from "../parts/field.tsx";
import { Fold } from "../parts/fold.tsx";
import { importWords as words } from "../words/import.ts";

/** Which column each field is read from, with some of its cells. */
export function ImportColumns(props: { found: Import; choose: (change: ImportChoice) => void }) {
  const { fields, columns } = props.found;
  const used = columns.filter((column) => column.field !== "");
  const unused = columns.filter((column) => column.field === "").map((column) => column.name);
  const assign = (field: string, name: string) => {
    // All of them are said from now on: what was found must not change under a choice.
    const all: Record<string, string> = {};
    for (const f of fields) all[f.id] = columns.find((column) => column.field === f.id)?.name ?? "";
    for (const f of fields) if (name !== "" && all[f.id] === name) all[f.id] = "";
    all[field] = name;
    props.choose({ columns: all });
    return undefined;
  };
  return (
    <Fold
      summary={words.columns}
      aside={words.columnsUsed(used.length, columns.length)}
      open={!columns.some((column) => column.field === "price")}
    >
      <p class="hint">{words.columnsHint}</p>
      {fields.map((field) => {
        const column = columns.find((c) => c.field === field.id);
        return (
          <SelectField
            key={field.id}
            id={`import/column/${field.id}`}
            label={field.title}
            hint={column && (column.sample.length > 0 ? words.sample(column.sample) : words.sampleNone)}
            value={column?.name ?? ""}
            choices={columns.map((c) => ({ id: c.name, title: c.name }))}
            unset={words.noColumn}
            keep={(name) => assign(field.id, name)}
          />
        );
      })}
      {unused.length > 0 && (
        <p class="hint" dir="auto">
          {words.unused(unused)}
        </p>
      )}
    </Fold>
  );
}
