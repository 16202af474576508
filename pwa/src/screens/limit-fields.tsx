import type { Catalogue, LimitDefinition, LimitInput } from "../generated/types.ts";
import { ChoiceField, SelectField } from "../parts/field.tsx";
import { Fold } from "../parts/fold.tsx";
import { QuantityInput } from "../parts/quantity-input.tsx";
import { limitWords as words } from "../words/bench.ts";
import type { LimitView } from "./use-limit.ts";
import type { Measured, Measuring } from "./use-measured.ts";

/** So many choices stand open as targets of their own; more become a list. */
const mostOpen = 4;

interface FieldsProps {
  /** Names the fields across screens. */
  id: string;
  definition: LimitDefinition;
  metric: boolean;
  measured: Measured;
  measuring: Measuring;
  view: LimitView;
}

/**
 * Fields for quantities of a limit, each with what the engine finds wrong in it.
 * `folded`: their fold says already that they may stay empty.
 */
export function LimitFields(props: FieldsProps & { inputs: LimitInput[]; folded?: boolean }) {
  return (
    <>
      {props.inputs.map((input) => (
        <LimitField key={input.name} {...props} input={input} />
      ))}
    </>
  );
}

function LimitField(props: FieldsProps & { input: LimitInput; folded?: boolean }) {
  const { input, measured, measuring, view } = props;
  const shared = {
    id: `${props.id}/${input.name}`,
    label: input.title,
    hint: hintOf(input, props.definition, props.folded ?? false),
    problem: view.field === input.name ? view.problem : undefined,
  };
  if (input.words && input.words.length > 0) {
    const choices = input.words.map((word, i) => ({ id: word, title: input.titles?.[i] ?? word }));
    const value = measured.words[input.name] ?? input.default ?? "";
    const keep = (word: string) => measuring.word(input.name, word === "" ? null : word);
    const open = choices.length <= mostOpen && (!input.optional || input.default !== undefined);
    if (open) return <ChoiceField {...shared} value={value} choices={choices} row keep={keep} />;
    const unset = input.optional ? words.none : words.choose;
    return (
      <SelectField {...shared} value={value} choices={choices} keep={keep} {...(value ? {} : { unset })} />
    );
  }
  const own = [input.unit, input.metric].filter((u): u is string => u !== undefined && u !== "");
  return (
    <QuantityInput
      {...shared}
      dimension={input.dimension}
      units={[...new Set(props.metric ? own.toReversed() : own)]}
      value={measured.quantities[input.name]}
      keep={(value) => measuring.quantity(input.name, value)}
      unread={measuring.unread && (() => measuring.unread?.(input.name))}
    />
  );
}

function hintOf(input: LimitInput, definition: LimitDefinition, folded: boolean): string | undefined {
  if (input.either) {
    const others = definition.quantities.filter((q) => q.either === input.either && q !== input);
    return words.either(others.map((q) => q.title));
  }
  // A choice taken when none is made is shown as made.
  if (input.default) return input.words ? undefined : words.assumed(input.default);
  return input.optional && !folded ? words.optional : undefined;
}

/** The maker's own figure, folded until there is one; nothing where a limit takes none. */
export function MakerField(props: FieldsProps & { catalogue: Catalogue }) {
  const { definition, measured, measuring, view } = props;
  if (!definition.maker) return null;
  const problem = view.field === "maker" ? view.problem : undefined;
  return (
    <Fold summary={words.maker} open={measured.maker !== undefined || problem !== undefined}>
      <QuantityInput
        id={`${props.id}/maker`}
        label={words.makerField}
        hint={words.makerHint}
        problem={problem}
        dimension={definition.maker}
        units={unitsOf(props.catalogue, definition.maker, props.metric)}
        value={measured.maker}
        keep={measuring.maker}
        unread={measuring.unread && (() => measuring.unread?.("maker"))}
      />
    </Fold>
  );
}

/** Units in use for a dimension, from what the limits ask for. */
function unitsOf(catalogue: Catalogue, dimension: string, metric: boolean): string[] {
  const found = new Set<string>();
  for (const definition of catalogue.limits) {
    for (const input of definition.quantities) {
      if (input.dimension !== dimension) continue;
      const own = metric ? [input.metric, input.unit] : [input.unit, input.metric];
      for (const unit of own) if (unit) found.add(unit);
    }
  }
  return [...found];
}
