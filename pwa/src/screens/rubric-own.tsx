import type { ComponentChildren } from "preact";
import type { Rubric } from "../generated/types.ts";
import { Banner, Page } from "../parts/page.tsx";
import { catalogueProblem, type ShopCatalogue, useCatalogue } from "../parts/use-catalogue.ts";
import { pageWords } from "../words/parts.ts";
import { rubricWords as words } from "../words/rubric.ts";

export interface OwnProps {
  catalogue: ShopCatalogue;
  /** The version that is saved. */
  saved: Rubric;
}

/** What is shown of an own rubric, once catalogue and rubric are here. */
export function WithOwn(props: { id: string; show: (own: OwnProps) => ComponentChildren }) {
  const catalogue = useCatalogue();
  const saved = catalogue?.own.find((o) => o.mark.id === props.id)?.rubric;
  if (catalogue && saved) return <>{props.show({ catalogue, saved })}</>;
  return (
    <Page title={words.title} back="/rubrics" backTitle={words.toRubrics}>
      {catalogue ? (
        <Banner tone="note">{words.gone}</Banner>
      ) : (
        <p role="status">{catalogueProblem.value ?? pageWords.loading}</p>
      )}
    </Page>
  );
}
