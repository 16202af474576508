import { useMemo, useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import { listingDoc } from "../data/id.ts";
import { type ListingSummary, toldRows } from "../data/read.ts";
import { planUnite, type Side, type ToldRows, type UnitePlan, uniteChanges } from "../data/unite.ts";
import type { Rubric } from "../generated/types.ts";
import { findListings, nothingAsked } from "../parts/find-listings.ts";
import { showMoney } from "../parts/money.ts";
import { Banner, Page } from "../parts/page.tsx";
import { save } from "../parts/save.ts";
import { type ShopCatalogue, useCatalogue } from "../parts/use-catalogue.ts";
import { useKinds, useListings } from "../parts/use-listings.ts";
import { useRubric } from "../parts/use-rubric.ts";
import { useShop } from "../parts/use-shop.ts";
import { useWatch } from "../parts/use-watch.ts";
import { findWords } from "../words/find.ts";
import { listingsWords } from "../words/listings.ts";
import { pageWords } from "../words/parts.ts";
import { uniteWords as words } from "../words/unite.ts";
import { FindField } from "./find-field.tsx";
import { listingTitle } from "./listing-title.ts";
import { DifferenceChoice } from "./listing-unite-choice.tsx";
import { NoListing } from "./no-listing.tsx";

/** Two records of one piece of equipment made into one: which other, what differs, and the choice of each. */
export function UniteScreen({ id }: { id: string }) {
  const { query } = useLocation();
  const all = useListings().value;
  const catalogue = useCatalogue();
  const kindOf = useKinds(all ?? none, catalogue);
  const mine = all?.find((one) => one.id === id && !one.deleted);
  const other = all?.find((one) => one.id === query.with && one.id !== id && !one.deleted && !one.away);
  if (all && !mine) return <NoListing />;
  if (!all || !mine || !catalogue) {
    return (
      <Page title={words.title} back={`/listing/${id}`} backTitle={words.back}>
        <p role="status">{pageWords.loading}</p>
      </Page>
    );
  }
  const props = { mine, all, kindOf, catalogue };
  return other ? (
    <Decide key={other.id} {...props} other={other} />
  ) : (
    <Choose {...props} gone={query.with !== undefined} />
  );
}

const none: ListingSummary[] = [];

interface Props {
  mine: ListingSummary;
  all: ListingSummary[];
  kindOf: (listing: ListingSummary) => string;
  catalogue: ShopCatalogue;
}

const MANY = 6;

function Choose({ mine, all, kindOf, catalogue, gone }: Props & { gone: boolean }) {
  const [q, setQ] = useState("");
  const currency = useShop()?.currency ?? "USD";
  const others = all.filter(
    (one) =>
      one.id !== mine.id &&
      !one.deleted &&
      !one.away &&
      (one.rubric === undefined || mine.rubric === undefined || one.rubric.id === mine.rubric.id),
  );
  const found = findListings(others, { ...nothingAsked, q }, { kindOf, miles: catalogue.miles }).listings;
  return (
    <Page title={words.title} back={`/listing/${mine.id}`} backTitle={words.back}>
      {gone && <Banner tone="note">{words.gone}</Banner>}
      {others.length === 0 ? (
        <p>{words.none}</p>
      ) : (
        <section class="block" aria-label={words.choose}>
          <h2 class="block-title">{words.choose}</h2>
          <p class="field-hint">{words.chooseHint}</p>
          {others.length >= MANY && (
            <FindField label={findWords.search} hint={findWords.searchIn} text={q} onText={setQ} />
          )}
          {found.length === 0 && <p role="status">{findWords.none(q.trim())}</p>}
          <ul class="plain-list">
            {found.slice(0, 40).map((one) => (
              <li key={one.id}>
                <a class="row-link" href={`/listing/${mine.id}/unite?with=${one.id}`}>
                  <span class="row-main" dir="auto">
                    <span class="unite-title">{listingTitle(one.title, kindOf(one) || undefined)}</span>
                    {one.place && <span class="row-note">{one.place}</span>}
                  </span>
                  <span class="row-aside figures">
                    {one.asking === undefined ? listingsWords.noAsking : showMoney(one.asking, currency)}
                  </span>
                </a>
              </li>
            ))}
          </ul>
        </section>
      )}
    </Page>
  );
}

function Decide({ mine, other, kindOf, catalogue }: Props & { other: ListingSummary }) {
  const { route } = useLocation();
  const rubric = useRubric(mine.rubric && { ...mine.rubric });
  const currency = useShop()?.currency ?? "USD";
  const docs = { mine: listingDoc(mine.id), theirs: listingDoc(other.id) };
  const told = useWatch(`unite/${mine.id}/${other.id}`, async () => ({
    mine: await toldRows(docs.mine),
    theirs: await toldRows(docs.theirs),
  })).value;
  const plan = useMemo(() => told && planUnite(told.mine, told.theirs), [told]);
  const [chosen, setChosen] = useState<ReadonlyMap<string, Side>>(new Map());
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const title = listingTitle(mine.title, kindOf(mine) || undefined);
  const go = async () => {
    if (!plan) return;
    const changes = uniteChanges(plan, chosen, docs, new Date().toISOString());
    const why = await save(words.label(title), changes);
    setProblem(why);
    if (why === undefined) route(`/listing/${mine.id}`, true);
  };
  const possible = plan !== undefined && plan.kinds === undefined;
  return (
    <Page
      title={words.title}
      back={`/listing/${mine.id}`}
      backTitle={words.back}
      actions={
        <>
          <a class="button" href={`/listing/${mine.id}/unite`}>
            {words.other}
          </a>
          <button type="button" class="button button-main" disabled={!possible} onClick={() => void go()}>
            {words.go}
          </button>
        </>
      }
    >
      {problem && (
        <Banner tone="problem" urgent>
          {problem}
        </Banner>
      )}
      <dl class="pairs">
        <div class="pair">
          <dt>{words.kept}</dt>
          <dd class="unite-title" dir="auto">
            {title}
          </dd>
        </div>
        <div class="pair">
          <dt>{words.away}</dt>
          <dd class="unite-title" dir="auto">
            {listingTitle(other.title, kindOf(other) || undefined)}
          </dd>
        </div>
      </dl>
      {!plan && <p role="status">{pageWords.loading}</p>}
      {plan?.kinds && (
        <Banner tone="problem">
          {words.kinds(kindOf(mine) || plan.kinds[0], kindOf(other) || plan.kinds[1])}
        </Banner>
      )}
      {plan && told && !plan.kinds && (
        <>
          <Taken plan={plan} theirs={told.theirs} />
          <Differences
            plan={plan}
            told={told}
            rubric={rubric}
            catalogue={catalogue}
            currency={currency}
            chosen={chosen}
            choose={(key, side) => setChosen(new Map(chosen).set(key, side))}
          />
        </>
      )}
    </Page>
  );
}

/** What goes over without a question. */
function Taken({ plan, theirs }: { plan: UnitePlan; theirs: ToldRows }) {
  const paths = [...plan.taken.keys()];
  const photos = paths.filter((p) => /(?:^|\/)photo\/[^/]+$/.test(p)).length;
  const checks = new Set(
    paths.filter((p) => /^finding\/[^/]+\/(?:answer|measured|note)$/.test(p)).map(checkOf),
  ).size;
  const fields = paths.filter((p) => !p.startsWith("finding/") && !/^(?:photo|pair)\//.test(p)).length;
  const links = [...theirs.keys()].filter((p) => /^link\/[^/]+$/.test(p)).length;
  const parts = [
    ...(fields > 0 ? [words.fields(fields)] : []),
    ...(checks > 0 ? [words.checks(checks)] : []),
    ...(photos > 0 ? [words.photos(photos)] : []),
  ];
  return (
    <section class="block" aria-label={words.taken}>
      <h2 class="block-title">{words.taken}</h2>
      <p class="figures">{parts.length === 0 ? words.takenNothing : parts.join(" · ")}</p>
      <p class="quiet">{words.notes}</p>
      {links > 0 && <p>{words.links(links)}</p>}
    </section>
  );
}

const checkOf = (path: string) => path.split("/")[1];

function Differences(props: {
  plan: UnitePlan;
  told: { mine: ToldRows; theirs: ToldRows };
  rubric: Rubric | undefined;
  catalogue: ShopCatalogue;
  currency: string;
  chosen: ReadonlyMap<string, Side>;
  choose: (key: string, side: Side) => void;
}) {
  const { differences } = props.plan;
  const title = differences.length === 0 ? words.differNot : words.differ(differences.length);
  return (
    <section class="block" aria-label={title}>
      <h2 class="block-title">{title}</h2>
      {differences.length > 0 && <p class="quiet">{words.lead}</p>}
      {differences.map((one) => (
        <DifferenceChoice
          key={one.key}
          difference={one}
          told={props.told}
          known={{ rubric: props.rubric, catalogue: props.catalogue, currency: props.currency }}
          side={props.chosen.get(one.key) ?? one.usual}
          choose={(side) => props.choose(one.key, side)}
        />
      ))}
      <p class="quiet">{words.hint}</p>
    </section>
  );
}
