import { ChoiceField } from "../parts/field.tsx";
import { shopWords as words } from "../words/shop.ts";

/** One or three phases, or not told. */
export function PhasesField(props: {
  id: string;
  label: string;
  value: number | undefined;
  keep: (value: number | null) => Promise<string | undefined>;
}) {
  return (
    <ChoiceField
      id={props.id}
      label={props.label}
      value={props.value === undefined ? "" : String(props.value)}
      choices={[
        { id: "1", title: words.onePhase },
        { id: "3", title: words.threePhase },
        { id: "", title: words.notTold },
      ]}
      row
      keep={(id) => props.keep(id === "" ? null : Number(id))}
    />
  );
}
