import { type Ask, type Found, narrows } from "../parts/find-listings.ts";
import { findWords as words } from "../words/find.ts";

/** How many are shown of how many, and the way out of what was asked. */
export function Sum(props: {
  ask: Ask;
  found: Found;
  /** Left out where it is offered elsewhere on the screen. */
  clear: (() => void) | undefined;
  change: (part: Partial<Ask>) => void;
}) {
  const { ask, found } = props;
  const asked = narrows(ask);
  const all = ask.state === "away" ? found.listings.length : found.all;
  return (
    <div class="list-sum">
      <p role="status">
        <span class="figures">{words.shown(found.listings.length, all)}</span>
        {ask.q.trim() !== "" && (
          <>
            {" · "}
            <b dir="auto">{ask.q.trim()}</b>
          </>
        )}
        {ask.state !== "" && ` · ${ask.state === "away" ? words.away : words.stands[ask.state]}`}
        {ask.sort !== "touched" && ` · ${words.sorts[ask.sort]}`}
      </p>
      {asked && props.clear && (
        <button type="button" class="button" onClick={props.clear}>
          {words.clear}
        </button>
      )}
      {asked && found.away > 0 && found.listings.length > 0 && (
        <button type="button" class="button button-plain" onClick={() => props.change({ state: "away" })}>
          {words.moreAway(found.away)}
        </button>
      )}
    </div>
  );
}

/** Nothing of the list is what was asked for. */
export function Nothing(props: { ask: Ask; found: Found; change: (part: Partial<Ask>) => void }) {
  const { ask, found } = props;
  const waiting = !narrows(ask);
  return (
    <div class="tag tag-blank">
      <h2>{waiting ? words.allAwayTitle : words.noneTitle}</h2>
      <p dir="auto">{waiting ? words.allAway : words.none(ask.q.trim())}</p>
      {!waiting && found.away > 0 && (
        <button type="button" class="button" onClick={() => props.change({ state: "away" })}>
          {words.showAway(found.away)}
        </button>
      )}
    </div>
  );
}
