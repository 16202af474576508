import { useState } from "preact/hooks";
import type { Part, Range } from "../generated/types.ts";
import { TextField } from "../parts/field.tsx";
import { Fold } from "../parts/fold.tsx";
import { RangeInput } from "../parts/range-input.tsx";
import { save, saveValue } from "../parts/save.ts";
import { pricesWords as words } from "../words/prices.ts";
import { partId } from "./part-id.ts";

/** A part that the book does not have yet: for rubrics of the shop's own. */
export function NewPart({ parts, currency }: { parts: Part[]; currency: string }) {
  const [title, setTitle] = useState("");
  const [unit, setUnit] = useState("");
  const [said, setSaid] = useState<string | undefined>(undefined);
  const [price, setPrice] = useState<Range | undefined>(undefined);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const add = async () => {
    if (title.trim() === "" || unit.trim() === "" || price === undefined) {
      setProblem(words.partIncomplete);
      return;
    }
    const id = partId(title, new Set(parts.map((p) => p.id)));
    const value = { title: title.trim(), unit: unit.trim(), price: { ...price } };
    const why = await saveValue(words.addPart, "book", `own/${id}`, value);
    setProblem(why);
    if (why !== undefined) return;
    setSaid(words.partAdded(title.trim(), id));
    setTitle("");
    setUnit("");
    setPrice(undefined);
  };
  return (
    <Fold summary={words.newPart}>
      <p class="hint">{words.newPartHint}</p>
      <TextField
        id="book/new/title"
        label={words.partTitle}
        value={title}
        most={120}
        keep={(text) => {
          setTitle(text);
          return undefined;
        }}
      />
      <TextField
        id="book/new/unit"
        label={words.partUnit}
        value={unit}
        most={20}
        keep={(text) => {
          setUnit(text);
          return undefined;
        }}
      />
      <RangeInput
        key={said ?? ""}
        id="book/new/price"
        label={words.partPrice}
        currency={currency}
        range={price}
        keep={async (range) => {
          setPrice(range ?? undefined);
          return undefined;
        }}
      />
      {problem && (
        <p class="field-problem" role="alert">
          {problem}
        </p>
      )}
      <button type="button" class="button" onClick={() => void add()}>
        {words.addThisPart}
      </button>
      {said && <p role="status">{said}</p>}
    </Fold>
  );
}

/** Takes an own part out of the book; a rubric that names it says so. */
export function RemovePart({ part }: { part: Part }) {
  const remove = () => void save(words.removePart, [{ doc: "book", path: `own/${part.id}`, value: null }]);
  return (
    <button type="button" class="button button-away" onClick={remove}>
      {words.removePart}
    </button>
  );
}
