import { useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import { newId } from "../data/id.ts";
import { isRecord, textOf } from "../data/shape.ts";
import { SAID, standOf } from "../data/stand.ts";
import { copyChanges } from "../data/unite.ts";
import { ChoiceField } from "../parts/field.tsx";
import { Fold } from "../parts/fold.tsx";
import { Banner } from "../parts/page.tsx";
import { save } from "../parts/save.ts";
import type { ListingDoc } from "../parts/use-listing.ts";
import { findWords, standWords as words } from "../words/find.ts";
import { today } from "./today.ts";

/** Where a listing stands, and what can be done with its record as a whole. */
export function ListingStand({ listing, title }: { listing: ListingDoc; title: string }) {
  const { route } = useLocation();
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const answered = [...listing.values.keys()].filter((p) => /^finding\/[^/]+\/answer$/.test(p)).length;
  const state = said(listing);
  const stand = standOf({ answered, ...(state === undefined ? {} : { state }) });
  const byWalk = findWords.stands[standOf({ answered })];
  const keep = (id: string) => {
    const value = id === "" ? null : { state: id, at: new Date().toISOString() };
    const now = SAID.find((one) => one === id);
    return save(words.label(now ? findWords.stands[now] : byWalk), [
      { doc: listing.doc, path: "state", value },
    ]);
  };
  const copy = async () => {
    const id = newId();
    const why = await save(words.copyLabel(title), copyChanges(listing.values, id, today()));
    if (why === undefined) route(`/listing/${id}`);
    else setProblem(why);
  };
  const away = isAway(listing);
  return (
    <Fold summary={words.title} aside={away ? findWords.away : findWords.stands[stand]}>
      <ChoiceField
        id={`${listing.doc}/state`}
        label={words.title}
        value={SAID.some((one) => one === stand) ? stand : ""}
        choices={[
          { id: "", title: words.byWalk(byWalk) },
          ...SAID.map((id) => ({ id, title: findWords.stands[id] })),
        ]}
        keep={keep}
      />
      {!away && (
        <div class="field">
          <button type="button" class="button" onClick={() => void putAway(listing, true).then(setProblem)}>
            {words.putAway}
          </button>
          <p class="field-hint">{words.putAwayHint}</p>
        </div>
      )}
      <div class="field">
        <button type="button" class="button" onClick={() => void copy()}>
          {words.copy}
        </button>
        <p class="field-hint">{words.copyHint}</p>
      </div>
      <div class="field">
        <a class="button" href={`/listing/${listing.id}/unite`}>
          {words.unite}
        </a>
        <p class="field-hint">{words.uniteHint}</p>
      </div>
      {problem && (
        <p class="field-problem" role="alert">
          {problem}
        </p>
      )}
    </Fold>
  );
}

const said = (listing: ListingDoc): string | undefined => {
  const value = listing.values.get("state");
  return isRecord(value) ? textOf(value.state) : undefined;
};

const isAway = (listing: ListingDoc): boolean => isRecord(listing.values.get("away"));

const putAway = (listing: ListingDoc, away: boolean) =>
  save(away ? findWords.awayLabel(1) : findWords.backLabel(1), [
    { doc: listing.doc, path: "away", value: away ? { at: new Date().toISOString() } : null },
  ]);

/** Says that a listing is out of the list, and leads to the one it was put together with. */
export function PutAway({ listing }: { listing: ListingDoc }) {
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const value = listing.values.get("away");
  if (!isRecord(value)) return null;
  const into = textOf(value.into);
  return (
    <Banner tone="note">
      <p>{words.isAway}</p>
      {into !== undefined && (
        <p>
          {words.wentInto} <a href={`/listing/${encodeURIComponent(into)}`}>{words.other}</a>
        </p>
      )}
      {problem && <p class="field-problem">{problem}</p>}
      <button type="button" class="button" onClick={() => void putAway(listing, false).then(setProblem)}>
        {words.bringBack}
      </button>
    </Banner>
  );
}
