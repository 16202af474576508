import type { Catalogue, Limit, LimitDefinition, LimitInput } from "../generated/types.ts";
import { ChoiceField } from "../parts/field.tsx";
import { Fold } from "../parts/fold.tsx";
import { QuantityInput } from "../parts/quantity-input.tsx";
import type { FindingView } from "../parts/use-listing.ts";
import { checkWords as words } from "../words/walkaround.ts";
import { LimitPanel } from "./limit-panel.tsx";
import type { LimitView } from "./use-limit.ts";
import type { Measuring } from "./use-measured.ts";

interface MeasureProps {
  /** Names the finding across screens. */
  id: string;
  limit: Limit;
  definition: LimitDefinition;
  catalogue: Catalogue;
  metric: boolean;
  finding: FindingView;
  measuring: Measuring;
  view: LimitView;
}

/** The quantities a check asks for, and the limit they are held against. */
export function CheckMeasure(props: MeasureProps) {
  const { definition, limit, view } = props;
  const asked = limit.ask.flatMap((name) => definition.quantities.find((q) => q.name === name) ?? []);
  const fixed = Object.entries(limit.fixed ?? {});
  return (
    <section class="block" aria-label={words.measured}>
      <h2 class="block-title">{words.measured}</h2>
      {asked.map((input) => (
        <Asked key={input.name} {...props} input={input} />
      ))}
      {fixed.length > 0 && (
        <p class="quiet">
          {words.fixed}:{" "}
          {fixed
            .map(
              ([name, text]) =>
                `${definition.quantities.find((q) => q.name === name)?.title ?? name} ${text}`,
            )
            .join(", ")}
        </p>
      )}
      {definition.maker && (
        <Fold summary={words.maker} open={props.finding.maker !== undefined}>
          <QuantityInput
            id={`${props.id}/maker`}
            label={words.makerField}
            hint={words.makerHint}
            problem={view.field === "maker" ? view.problem : undefined}
            dimension={definition.maker}
            units={unitsOf(props.catalogue, definition.maker, props.metric)}
            value={props.finding.maker}
            keep={props.measuring.maker}
          />
        </Fold>
      )}
      <LimitPanel view={view} named={asked.some((a) => a.name === view.field) || view.field === "maker"} />
    </section>
  );
}

function Asked(props: MeasureProps & { input: LimitInput }) {
  const { input, finding, measuring, view } = props;
  const problem = view.field === input.name ? view.problem : undefined;
  const id = `${props.id}/${input.name}`;
  if (input.words && input.words.length > 0) {
    const choices = input.words.map((word) => ({ id: word, title: word }));
    return (
      <ChoiceField
        id={id}
        label={input.title}
        hint={hintOf(input)}
        problem={problem}
        value={finding.words[input.name] ?? ""}
        choices={choices}
        row
        keep={(word) => measuring.word(input.name, word)}
      />
    );
  }
  const own = [input.unit, input.metric].filter((u): u is string => u !== undefined && u !== "");
  const units = [...new Set(props.metric ? own.toReversed() : own)];
  return (
    <QuantityInput
      id={id}
      label={input.title}
      hint={hintOf(input)}
      problem={problem}
      dimension={input.dimension}
      units={units}
      value={finding.quantities[input.name]}
      keep={(value) => measuring.quantity(input.name, value)}
    />
  );
}

function hintOf(input: LimitInput): string | undefined {
  if (input.default) return words.assumed(input.default);
  return input.optional ? words.optional : undefined;
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
