import "../style/money.css";
import "../style/charts.css";
import "../style/compare.css";
import { useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import { type ListingSummary, listings } from "../data/read.ts";
import { Fold } from "../parts/fold.tsx";
import { Banner, Page } from "../parts/page.tsx";
import { useCatalogue } from "../parts/use-catalogue.ts";
import { type Tried, useComparison } from "../parts/use-comparison.ts";
import { useWatch } from "../parts/use-watch.ts";
import { compareWords as words } from "../words/compare.ts";
import { decisionWords } from "../words/decision.ts";
import { pageWords } from "../words/parts.ts";
import { chosenIn } from "./chosen-in.ts";
import { Bars } from "./compare-bars.tsx";
import { Better, CatchingUp } from "./compare-better.tsx";
import { ChooseListings } from "./compare-choose.tsx";
import { Ranking, UsualWeights } from "./compare-ranking.tsx";
import { inOrder } from "./compare-side.ts";
import { Ahead } from "./compare-spread.tsx";
import { SideTable } from "./compare-table.tsx";
import { TryPrice } from "./compare-try.tsx";
import { listingTitle } from "./listing-title.ts";
import { OfferSays } from "./price-list.tsx";

/** The choice as it stands in the address. */
const address = (ids: readonly string[]): string =>
  ids.length === 0 ? "/compare" : `/compare?of=${ids.join(",")}`;

/** Several listings side by side: which is the better buy, by how much, and what would turn it round. */
export function CompareScreen() {
  const { query, route } = useLocation();
  const { value: kept, problem } = useWatch("compare/listings", () => listings());
  const catalogue = useCatalogue();
  const asked = chosenIn(query.of);
  // Who comes without a choice goes on choosing until told to compare.
  const [choosing, setChoosing] = useState(asked.length < 2);
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
  const byId = new Map(kept.map((l) => [l.id, l]));
  const here = asked.filter((id) => byId.has(id));
  const kindOf = (l: ListingSummary | undefined) =>
    catalogue.rubrics.find((r) => r.id === l?.rubric?.id)?.kind;
  const titleOf = (id: string) => listingTitle(byId.get(id)?.title ?? "", kindOf(byId.get(id)));
  const judged = here.filter((id) => kindOf(byId.get(id)) !== undefined);
  const { least, most } = catalogue.compared;
  const fits = judged.length >= least && judged.length <= most;
  const open = choosing || !fits;
  const actions = (
    <>
      {!open && (
        <a class="button button-main" href={`/compare/decide?of=${judged.join(",")}`}>
          {words.decide}
        </a>
      )}
      <button
        type="button"
        class={open ? "button button-main" : "button"}
        disabled={open && !fits}
        onClick={() => {
          setChoosing(!open);
          scrollTo(0, 0);
        }}
      >
        {open ? goWords(judged.length, most) : words.choose}
      </button>
    </>
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
          listings={kept.filter((l) => !l.away || here.includes(l.id))}
          chosen={here}
          most={most}
          kindOf={kindOf}
          choose={(ids) => route(address(ids), true)}
        />
      ) : (
        <SideBySide ids={judged} />
      )}
      {open && <DecisionsLink />}
    </Page>
  );
}

const goWords = (n: number, most: number) => (n > most ? words.goMost(most) : words.go(n));

function DecisionsLink() {
  return (
    <a class="button" href="/decisions">
      {decisionWords.list}
    </a>
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

/** As many are said loudly, and as many in sight at all; of many listings there is more to say, which opens. */
const loud = 2;
const inSight = 4;

function Says({ sentences }: { sentences: readonly string[] }) {
  const rest = sentences.slice(inSight);
  return (
    <section class="block" aria-label={words.says}>
      <OfferSays sentences={sentences.slice(0, loud)} />
      <Plainly sentences={sentences.slice(loud, inSight)} />
      {rest.length > 0 && (
        <Fold summary={words.saysMore(rest.length)}>
          <Plainly sentences={rest} />
        </Fold>
      )}
    </section>
  );
}

function Plainly({ sentences }: { sentences: readonly string[] }) {
  return (
    <>
      {sentences.map((sentence) => (
        <p key={sentence} dir="auto">
          {sentence}
        </p>
      ))}
    </>
  );
}

function SideBySide({ ids }: { ids: string[] }) {
  const [tried, setTried] = useState<Tried>({});
  const { comparison, files, problem, reckoning } = useComparison(ids, tried);
  if (problem) {
    return (
      <>
        <Banner tone="problem" urgent>
          {problem}
        </Banner>
        <UsualWeights />
      </>
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
  const { currency } = comparison;
  const askedOf = (id: string) => files?.[ids.indexOf(id)]?.listing.asking;
  return (
    <div class="compare" aria-busy={reckoning}>
      <p class="reckoning" role="status">
        {reckoning ? words.reckoning : ""}
      </p>
      <Says sentences={comparison.sentences} />
      <Bars sides={sides} currency={currency} />
      <Ahead sides={sides} currency={currency} />
      <SideTable
        sides={sides}
        currency={currency}
        hint={words.triedHint}
        priceOf={({ id, letter }) => (
          <TryPrice
            id={id}
            letter={letter}
            currency={currency}
            asked={askedOf(id)}
            tried={tried[id]}
            keep={(cents) =>
              setTried((now) => {
                const { [id]: _, ...rest } = now;
                return cents === null ? rest : { ...rest, [id]: cents };
              })
            }
          />
        )}
      />
      <Better comparison={comparison} sides={sides} />
      <CatchingUp comparison={comparison} sides={sides} />
      <Ranking comparison={comparison} sides={sides} />
      <nav class="button-row" aria-label={words.decide}>
        <a class="button" href={`/compare/paper?ids=${ids.join(",")}`}>
          {words.paper}
        </a>
        <DecisionsLink />
      </nav>
    </div>
  );
}
