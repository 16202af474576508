import "../style/money.css";
import "../style/charts.css";
import "../style/compare.css";
import { useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import { type ListingSummary, listings } from "../data/read.ts";
import { Banner, Page } from "../parts/page.tsx";
import { useCatalogue } from "../parts/use-catalogue.ts";
import { useComparison } from "../parts/use-comparison.ts";
import { useWatch } from "../parts/use-watch.ts";
import { compareWords as words } from "../words/compare.ts";
import { pageWords } from "../words/parts.ts";
import { Better, CatchingUp } from "./compare-better.tsx";
import { Cards } from "./compare-cards.tsx";
import { ChooseListings } from "./compare-choose.tsx";
import { Ranking } from "./compare-ranking.tsx";
import { inOrder } from "./compare-side.ts";
import { Ahead } from "./compare-spread.tsx";
import { listingTitle } from "./listing-title.ts";

/** The choice as it stands in the address. */
const address = (ids: readonly string[]): string =>
  ids.length === 0 ? "/compare" : `/compare?of=${ids.join(",")}`;

/** Several listings side by side: which is the better buy, by how much, and what would turn it round. */
export function CompareScreen() {
  const { query, route } = useLocation();
  const { value: kept, problem } = useWatch("compare/listings", () => listings());
  const catalogue = useCatalogue();
  const [choosing, setChoosing] = useState(false);
  if (!kept || !catalogue) {
    return (
      <Page title={words.title} back="/" backTitle={pageWords.toListings}>
        {problem ? (
          <Banner tone="problem" urgent>
            {problem}
          </Banner>
        ) : (
          <p role="status">{pageWords.loading}</p>
        )}
      </Page>
    );
  }
  if (kept.length < 2) return <TooFew have={kept.length} />;
  const asked = [...new Set((query.of ?? "").split(",").filter((id) => id !== ""))];
  const byId = new Map(kept.map((l) => [l.id, l]));
  const here = asked.filter((id) => byId.has(id));
  const kindOf = (l: ListingSummary | undefined) =>
    catalogue.rubrics.find((r) => r.id === l?.rubric?.id)?.kind;
  const titleOf = (id: string) => listingTitle(byId.get(id)?.title ?? "", kindOf(byId.get(id)));
  const judged = here.filter((id) => kindOf(byId.get(id)) !== undefined);
  const open = choosing || judged.length < 2;
  const actions = (
    <button
      type="button"
      class={open ? "button button-main" : "button"}
      disabled={open && judged.length < 2}
      onClick={() => {
        setChoosing(!open);
        scrollTo(0, 0);
      }}
    >
      {open ? words.go(judged.length) : words.choose}
    </button>
  );
  return (
    <Page title={words.title} back="/" backTitle={pageWords.toListings} actions={actions}>
      {here.length < asked.length && <Banner tone="note">{words.gone(asked.length - here.length)}</Banner>}
      {judged.length < here.length && (
        <Banner tone="note">
          {words.noKind(here.filter((id) => !judged.includes(id)).map((id) => titleOf(id)))}
        </Banner>
      )}
      {open ? (
        <ChooseListings
          listings={kept}
          chosen={here}
          kindOf={kindOf}
          choose={(ids) => route(address(ids), true)}
        />
      ) : (
        <SideBySide ids={judged} />
      )}
    </Page>
  );
}

/** What to do where there is nothing to compare. */
function TooFew({ have }: { have: number }) {
  const add = (
    <a class="button button-main" href="/new">
      {words.add}
    </a>
  );
  return (
    <Page title={words.title} back="/" backTitle={pageWords.toListings} actions={add}>
      <h2>{have === 0 ? words.noneTitle : words.oneTitle}</h2>
      <p>{have === 0 ? words.none : words.one}</p>
    </Page>
  );
}

function SideBySide({ ids }: { ids: string[] }) {
  const { comparison, problem } = useComparison(ids);
  if (problem) {
    return (
      <Banner tone="problem" urgent>
        {problem}
      </Banner>
    );
  }
  if (!comparison) {
    return (
      <p class="loading" role="status">
        {words.loading}
      </p>
    );
  }
  const sides = inOrder(comparison, ids);
  return (
    <div class="compare">
      <div class="offer-says">
        {comparison.sentences.slice(0, 2).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
      {comparison.sentences.slice(2).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <Ahead sides={sides} currency={comparison.currency} />
      <Cards sides={sides} currency={comparison.currency} />
      <Better comparison={comparison} sides={sides} />
      <CatchingUp comparison={comparison} sides={sides} />
      <Ranking comparison={comparison} sides={sides} />
    </div>
  );
}
