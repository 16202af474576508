import type { Catalogue, Limit, LimitDefinition } from "../generated/types.ts";
import type { FindingView } from "../parts/use-listing.ts";
import { benchWords } from "../words/bench.ts";
import { checkWords as words } from "../words/walkaround.ts";
import { benchHref } from "./bench-address.ts";
import { LimitFields, MakerField } from "./limit-fields.tsx";
import { LimitPanel } from "./limit-panel.tsx";
import { givenTexts, type LimitView } from "./use-limit.ts";
import type { Measuring } from "./use-measured.ts";

/** The quantities a check asks for, and the limit they are held against. */
export function CheckMeasure(props: {
  /** Names the finding across screens. */
  id: string;
  /** The address of the check. */
  here: string;
  limit: Limit;
  definition: LimitDefinition;
  catalogue: Catalogue;
  metric: boolean;
  finding: FindingView;
  measuring: Measuring;
  view: LimitView;
}) {
  const { definition, limit, view, finding } = props;
  const asked = limit.ask.flatMap((name) => definition.quantities.find((q) => q.name === name) ?? []);
  const fixed = Object.entries(limit.fixed ?? {});
  const fields = { ...props, measured: finding };
  return (
    <section class="block" aria-label={words.measured}>
      <h2 class="block-title">{words.measured}</h2>
      <LimitFields {...fields} inputs={asked} />
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
      <MakerField {...fields} />
      <LimitPanel view={view} named={asked.some((a) => a.name === view.field) || view.field === "maker"} />
      <a class="button" href={benchHref(definition.name, givenTexts(limit.fixed ?? {}, finding), props.here)}>
        {benchWords.open}
      </a>
    </section>
  );
}
