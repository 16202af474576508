import "../style/money.css";
import "../style/walkaround.css";
import "../style/visit.css";
import { useEffect } from "preact/hooks";
import type { VisitPlan } from "../generated/types.ts";
import { Banner, Page } from "../parts/page.tsx";
import { type ListingDoc, useListing } from "../parts/use-listing.ts";
import { useRubric } from "../parts/use-rubric.ts";
import { useVisit } from "../parts/use-visit.ts";
import { visitWords as words } from "../words/visit.ts";
import { stateWords } from "../words/walkaround.ts";
import { Cautions } from "./fit-point.tsx";
import { listingTitle } from "./listing-title.ts";
import { NoListing } from "./no-listing.tsx";
import { VisitBring, VisitWithout } from "./visit-needs.tsx";
import { VisitQuestions } from "./visit-questions.tsx";

/** What to ask, bring and allow before the drive to a listing, and what will stay open. */
export function VisitScreen({ id }: { id: string }) {
  const listing = useListing(id);
  const rubric = useRubric(listing?.values.get("rubric"));
  const { plan, problem } = useVisit(id);
  usePrintedFolds();
  if (listing?.empty) return <NoListing />;
  return (
    <Page
      title={words.title}
      back={`/listing/${id}`}
      backTitle={words.back}
      actions={
        <>
          <button type="button" class="button" onClick={() => print()}>
            {words.print}
          </button>
          <a class="button button-main" href={`/listing/${id}/walk`}>
            {words.toWalk}
          </a>
        </>
      }
    >
      {listing && (
        <p class="subject" dir="auto">
          {listingTitle(listing.title, rubric?.kind)}
        </p>
      )}
      {problem && (
        <Banner tone="problem" urgent>
          {problem}
        </Banner>
      )}
      {!problem && !plan && (
        <p class="loading" role="status">
          {words.loading}
        </p>
      )}
      {listing && plan && <Plan listing={listing} plan={plan} />}
    </Page>
  );
}

function Plan({ listing, plan }: { listing: ListingDoc; plan: VisitPlan }) {
  return (
    <>
      <p class="big-line figures">{plan.sentence}</p>
      <VisitQuestions listing={listing} plan={plan} />
      <VisitBring plan={plan} />
      <Time plan={plan} />
      <VisitWithout plan={plan} />
      <Cautions title={words.cautions} lines={plan.cautions} />
    </>
  );
}

function Time({ plan }: { plan: VisitPlan }) {
  if (plan.sections.length === 0) return null;
  return (
    <section class="block" aria-label={words.time}>
      <h2 class="block-title">{words.time}</h2>
      <table class="visit-time">
        <tbody>
          {plan.sections.map((s) => (
            <tr key={s.id}>
              <th scope="row">
                {s.title}
                <span class="row-note">
                  {stateWords[s.state] ?? s.state} · {words.checks(s.checks)}
                </span>
              </th>
              <td class="figures">{words.minutes(s.minutes)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">{words.all}</th>
            <td class="figures">{words.minutes(plan.minutes)}</td>
          </tr>
        </tfoot>
      </table>
    </section>
  );
}

/** On paper nothing can be tapped open: what is folded is printed open. */
function usePrintedFolds(): void {
  useEffect(() => {
    let opened: HTMLDetailsElement[] = [];
    const open = () => {
      opened = [...document.querySelectorAll<HTMLDetailsElement>("main details:not([open])")];
      for (const fold of opened) fold.open = true;
    };
    const close = () => {
      for (const fold of opened) fold.open = false;
      opened = [];
    };
    addEventListener("beforeprint", open);
    addEventListener("afterprint", close);
    return () => {
      removeEventListener("beforeprint", open);
      removeEventListener("afterprint", close);
    };
  }, []);
}
