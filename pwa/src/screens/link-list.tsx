import { useState } from "preact/hooks";
import { hasExpired, isOpen, type Link } from "../data/links.ts";
import { Fold } from "../parts/fold.tsx";
import { moment } from "../parts/moment.ts";
import { save } from "../parts/save.ts";
import type { ListingDoc } from "../parts/use-listing.ts";
import { withdrawLink } from "../sync/links.ts";
import { linkWords as words } from "../words/hand-over.ts";
import { LinkAddress } from "./link-address.tsx";

/** Links given out for a listing: how each stands, its address again, and taking it back. */
export function LinkList({ listing, links }: { listing: ListingDoc; links: Link[] }) {
  return (
    <section class="block" aria-label={words.given}>
      <h2 class="block-title">{words.given}</h2>
      {links.length === 0 && <p class="quiet">{words.none}</p>}
      <div>
        {links.map((link) => (
          <Fold key={link.id} summary={words.made(moment(link.created))} aside={stateText(link)}>
            <Standing link={link} />
            {isOpen(link) && <LinkAddress link={link} />}
            {/* Where this device's clock runs ahead, the link may open still. */}
            {!link.withdrawn && <Withdraw listing={listing} link={link} />}
          </Fold>
        ))}
      </div>
    </section>
  );
}

function stateText(link: Link): string {
  if (link.withdrawn) return words.withdrawn;
  if (hasExpired(link)) return words.expired(moment(link.expires));
  return link.answers.length > 0 ? words.answers(link.answers.length) : words.openNow;
}

function Standing({ link }: { link: Link }) {
  return (
    <ul class="plain-list">
      <li>{words[hasExpired(link) ? "expired" : "expires"](moment(link.expires))}</li>
      <li>{link.opened ? words.opened(moment(link.opened)) : words.neverOpened}</li>
      <li>{words.answers(link.answers.length)}</li>
    </ul>
  );
}

/** Asked back once, since it cannot be undone. */
function Withdraw({ listing, link }: { listing: ListingDoc; link: Link }) {
  const [at, setAt] = useState<"idle" | "asking" | "going">("idle");
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const go = async () => {
    setAt("going");
    setProblem(undefined);
    try {
      await withdrawLink(link.id);
      const path = `link/${link.id}`;
      const before = listing.values.get(path);
      const value = {
        ...(typeof before === "object" && !Array.isArray(before) ? before : {}),
        withdrawn: true,
      };
      // Taken back here it would stand as open, and never opens again.
      setProblem(await save(words.withdrawnLabel, [{ doc: listing.doc, path, value }], { undoable: false }));
    } catch (cause) {
      setProblem(cause instanceof Error ? cause.message : String(cause));
    }
    setAt("idle");
  };
  return (
    <div class="block">
      {at === "idle" ? (
        <button type="button" class="button button-away" onClick={() => setAt("asking")}>
          {words.withdraw}
        </button>
      ) : (
        <div class="banner banner-note" role="alertdialog" aria-label={words.withdraw}>
          <p>{words.withdrawAsk}</p>
          <div class="button-row">
            <button type="button" class="button" disabled={at === "going"} onClick={() => setAt("idle")}>
              {words.keep}
            </button>
            <button
              type="button"
              class="button button-away"
              disabled={at === "going"}
              onClick={() => void go()}
            >
              {at === "going" ? words.withdrawing : words.withdrawGo}
            </button>
          </div>
        </div>
      )}
      {problem && (
        <p class="field-problem" role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}
