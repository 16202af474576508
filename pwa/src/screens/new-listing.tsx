import { useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import { listingDoc, newId } from "../data/id.ts";
import { keepRubric } from "../data/rubric.ts";
import type { Rubric } from "../generated/types.ts";
import { Banner, Page } from "../parts/page.tsx";
import { save } from "../parts/save.ts";
import { catalogueProblem, useCatalogue } from "../parts/use-catalogue.ts";
import { newListingWords as words } from "../words/listings.ts";
import { pageWords } from "../words/parts.ts";
import { today } from "./today.ts";

/** One tap makes the listing, so nothing typed afterwards can be lost. */
export function NewListingScreen() {
  const catalogue = useCatalogue();
  const { route } = useLocation();
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const make = async (rubric: Rubric) => {
    const id = newId();
    const doc = listingDoc(id);
    const { mark, changes } = await keepRubric(rubric);
    const why = await save(words.label(rubric.kind), [
      ...changes,
      { doc, path: "rubric", value: { ...mark } },
      { doc, path: "date", value: today() },
    ]);
    if (why === undefined) route(`/listing/${id}`, true);
    else setProblem(why);
  };
  return (
    <Page title={words.title} back="/" backTitle={pageWords.toListings}>
      {problem && (
        <Banner tone="problem" urgent>
          {problem}
        </Banner>
      )}
      <h2>{words.ask}</h2>
      <p class="quiet">{words.lead}</p>
      {!catalogue && <p role="status">{catalogueProblem.value ? words.none : pageWords.loading}</p>}
      <ul class="tags">
        {catalogue?.rubrics.map((rubric) => (
          <li key={rubric.id}>
            <button type="button" class="tag kind" onClick={() => void make(rubric)}>
              <b class="tag-title">{rubric.kind}</b>
              <span class="kind-about">{rubric.about}</span>
              <span class="quiet figures">{words.parts(countOf(rubric), minutesOf(rubric))}</span>
            </button>
          </li>
        ))}
      </ul>
    </Page>
  );
}

const checksOf = (rubric: Rubric) => rubric.sections.flatMap((section) => section.checks);
const countOf = (rubric: Rubric) => checksOf(rubric).length;
const minutesOf = (rubric: Rubric) => Math.round(checksOf(rubric).reduce((sum, c) => sum + c.minutes, 0));
