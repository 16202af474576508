import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from "preact/hooks";
import type { ListingSummary } from "../data/read.ts";
import { addressOf, findListings, narrows } from "../parts/find-listings.ts";
import { Fold } from "../parts/fold.tsx";
import { keepPlace, placeIn, scrollToPlace } from "../parts/list-place.ts";
import { Banner, Page } from "../parts/page.tsx";
import { save } from "../parts/save.ts";
import { type ShopCatalogue, useCatalogue } from "../parts/use-catalogue.ts";
import { useGrowing } from "../parts/use-growing.ts";
import { useKinds, useListings } from "../parts/use-listings.ts";
import { useShop } from "../parts/use-shop.ts";
import { findWords } from "../words/find.ts";
import { listingsWords as words } from "../words/listings.ts";
import { pageWords } from "../words/parts.ts";
import { ListingItem } from "./listing-card.tsx";
import { Finder } from "./listing-finder.tsx";
import { isDemo } from "./listing-title.ts";
import { Nothing, Sum } from "./listings-sum.tsx";
import { useAsk } from "./use-ask.ts";

/** So many on the screen at first, whatever its size. */
const FIRST = 14;
/** From so many on it takes longer to look through them than to ask for them. */
const MANY = 6;

/** Everything under appraisal: found, put in order, put away. */
export function ListingsScreen() {
  const { value, problem } = useListings();
  const catalogue = useCatalogue();
  const currency = useShop()?.currency ?? "USD";
  const { ask, change, flush } = useAsk();
  const kept = useMemo(() => value?.filter((l) => !l.deleted || l.changedAfterDelete), [value]);
  const deleted = useMemo(() => value?.filter((l) => l.deleted && !l.changedAfterDelete) ?? [], [value]);
  const kindOf = useKinds(value ?? none, catalogue);
  const known = useMemo(() => ({ kindOf, miles: catalogue?.miles ?? {} }), [kindOf, catalogue]);
  const address = addressOf(ask);
  const found = useMemo(() => kept && findListings(kept, ask, known), [kept, address, known]);
  const choice = useChoice(found?.listings ?? none);
  const [finding, setFinding] = useState(false);
  const cards = { kindOf, catalogue, currency };
  const many = (kept?.length ?? 0) >= MANY;
  const clear = () => change({ q: "", kind: "", place: "", state: "" });
  return (
    <Page
      title={words.title}
      actions={
        choice.ids ? (
          <Choosing choice={choice} found={found?.listings ?? none} away={ask.state === "away"} />
        ) : (
          <>
            {finding && found && (
              <>
                <Finder ask={ask} found={found} catalogue={catalogue} change={change} />
                {narrows(ask) && (
                  <button type="button" class="button" onClick={clear}>
                    {findWords.clear}
                  </button>
                )}
                <button
                  type="button"
                  class="button"
                  disabled={found.listings.length === 0}
                  onClick={() => {
                    choice.begin();
                    setFinding(false);
                  }}
                >
                  {findWords.several}
                </button>
              </>
            )}
            {kept && kept.length > 1 && !finding && (
              <a class="button" href="/compare">
                {words.compare}
              </a>
            )}
            {many && (
              <button
                type="button"
                class="button"
                aria-expanded={finding}
                onClick={() => setFinding(!finding)}
              >
                {finding ? findWords.close : findWords.find}
              </button>
            )}
            {!finding && (
              <a class="button button-main" href="/new">
                {words.add}
              </a>
            )}
          </>
        )
      }
    >
      {problem && (
        <Banner tone="problem" urgent>
          {words.failed} {problem}
        </Banner>
      )}
      {!kept && !problem && <p role="status">{pageWords.loading}</p>}
      {kept?.every((one) => isDemo(one.note ?? "")) && <p>{words.what}</p>}
      {kept?.length === 0 && <Empty />}
      {found && kept && kept.length > 0 && (
        <>
          {(many || narrows(ask)) && (
            <Sum ask={ask} found={found} clear={finding ? undefined : clear} change={change} />
          )}
          {choice.problem && (
            <Banner tone="problem" urgent>
              {choice.problem}
            </Banner>
          )}
          {found.listings.length === 0 && <Nothing ask={ask} found={found} change={change} />}
          <Cards
            address={address}
            listings={found.listings}
            choice={choice}
            many={many}
            flush={flush}
            {...cards}
          />
          {!narrows(ask) && found.away > 0 && (
            <button type="button" class="button button-plain" onClick={() => change({ state: "away" })}>
              {findWords.showAway(found.away)}
            </button>
          )}
        </>
      )}
      {deleted.length > 0 && !narrows(ask) && (
        <Fold summary={words.deletedTitle(deleted.length)}>
          <ul class="tags">
            {deleted.map((one) => (
              <ListingItem
                key={one.id}
                listing={one}
                kind={kindOf(one)}
                catalogue={catalogue}
                currency={currency}
              />
            ))}
          </ul>
        </Fold>
      )}
    </Page>
  );
}

const none: ListingSummary[] = [];

interface Choice {
  /** The listings chosen; undefined while none are being chosen. */
  ids: ReadonlySet<string> | undefined;
  problem: string | undefined;
  begin: () => void;
  end: () => void;
  toggle: (id: string) => void;
  all: () => void;
  /** Puts those chosen away, or brings them back. */
  putAway: (away: boolean) => void;
}

/** Several listings at once. What is no longer shown is no longer chosen. */
function useChoice(shown: readonly ListingSummary[]): Choice {
  const [chosen, setChosen] = useState<ReadonlySet<string> | undefined>(undefined);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const toggle = useCallback(
    (id: string) =>
      setChosen((before) => {
        const next = new Set(before);
        if (!next.delete(id)) next.add(id);
        return next;
      }),
    [],
  );
  const ids = useMemo(
    () => chosen && new Set(shown.map((one) => one.id).filter((id) => chosen.has(id))),
    [chosen, shown],
  );
  const putAway = async (away: boolean) => {
    const some = shown.filter((one) => ids?.has(one.id));
    const value = away ? { at: new Date().toISOString() } : null;
    const label = away ? findWords.awayLabel(some.length) : findWords.backLabel(some.length);
    const why = await save(
      label,
      some.map(({ doc }) => ({ doc, path: "away", value })),
    );
    setProblem(why);
    if (why === undefined) setChosen(undefined);
  };
  return {
    ids,
    problem,
    toggle,
    begin: () => setChosen(new Set()),
    end: () => setChosen(undefined),
    all: () => setChosen(new Set(shown.map((one) => one.id))),
    putAway: (away) => void putAway(away),
  };
}

/** The bar while several are being chosen. */
function Choosing(props: { choice: Choice; found: ListingSummary[]; away: boolean }) {
  const { choice, found, away } = props;
  const count = choice.ids?.size ?? 0;
  return (
    <>
      <p class="choosing" role="status">
        <b class="figures">{findWords.chosen(count)}</b> {count === 0 && findWords.chooseHint}
      </p>
      <button type="button" class="button" onClick={choice.end}>
        {findWords.done}
      </button>
      {count < found.length && (
        <button type="button" class="button" onClick={choice.all}>
          {findWords.chooseAll(found.length)}
        </button>
      )}
      <button
        type="button"
        class="button button-main"
        disabled={count === 0}
        onClick={() => choice.putAway(!away)}
      >
        {away ? findWords.bringBack(count) : findWords.putAway(count)}
      </button>
    </>
  );
}

/** The cards, a screenful first, and where one was among them. */
function Cards(props: {
  address: string;
  listings: ListingSummary[];
  kindOf: (listing: ListingSummary) => string;
  catalogue: ShopCatalogue | undefined;
  currency: string;
  choice: Choice;
  many: boolean;
  flush: () => void;
}) {
  const { address, listings, kindOf, catalogue, currency, choice, many } = props;
  const list = useRef<HTMLUListElement>(null);
  const now = useRef(address);
  now.current = address;
  const [place] = useState(() => placeIn(address));
  const before = place.id === undefined ? 0 : listings.findIndex((one) => one.id === place.id) + 1;
  const count = useGrowing(address, listings.length, FIRST + before);
  useEffect(() => {
    // Another question is answered from its first card on.
    if (address !== place.address) scrollTo(0, 0);
  }, [address]);
  useLayoutEffect(() => () => keepPlace(now.current, list.current), []);
  useEffect(() => {
    scrollToPlace(place, list.current);
    // Cards not drawn before have their true height only now.
    const frame = requestAnimationFrame(() => scrollToPlace(place, list.current));
    return () => cancelAnimationFrame(frame);
  }, [place]);
  return (
    <ul class={many ? "tags tags-many" : "tags"} ref={list} onPointerDown={props.flush}>
      {listings.slice(0, count).map((one) => (
        <ListingItem
          key={one.id}
          listing={one}
          kind={kindOf(one)}
          catalogue={catalogue}
          currency={currency}
          chosen={choice.ids?.has(one.id)}
          choose={choice.toggle}
        />
      ))}
    </ul>
  );
}

function Empty() {
  return (
    <div class="tag tag-blank">
      <h2>{words.emptyTitle}</h2>
      <p>{words.emptyLead}</p>
      <ol class="first-steps">
        {words.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
    </div>
  );
}
