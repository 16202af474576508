import { useMemo, useRef } from "preact/hooks";
import type { ListingSummary } from "../data/read.ts";
import { SAID, standOf } from "../data/stand.ts";
import { type Glance, useGlance } from "../parts/glance.ts";
import { Hazard } from "../parts/hazard.tsx";
import { showMoney } from "../parts/money.ts";
import { PhotoImage } from "../parts/photo-image.tsx";
import { AnswerCount } from "../parts/seller-says.tsx";
import type { ShopCatalogue } from "../parts/use-catalogue.ts";
import { useNear } from "../parts/use-near.ts";
import { findWords } from "../words/find.ts";
import { listingsWords as words } from "../words/listings.ts";
import { photoWords } from "../words/photos.ts";
import { isDemo, listingTitle } from "./listing-title.ts";

interface CardProps {
  listing: ListingSummary;
  /** Title of its kind, "" where that is not known. */
  kind: string;
  catalogue: ShopCatalogue | undefined;
  currency: string;
  /** Whether it is one of several that are being chosen; undefined while none are. */
  chosen?: boolean | undefined;
  choose?: ((id: string) => void) | undefined;
}

/** One listing of the list as an inspection tag; picture and verdict come when it is on the screen. */
export function ListingItem(props: CardProps) {
  const { listing, kind, catalogue, currency, chosen, choose } = props;
  // Hundreds of cards that did not change are not gone through again.
  return useMemo(() => <Item {...props} />, [listing, kind, catalogue, currency, chosen, choose]);
}

function Item(props: CardProps) {
  const { listing, chosen, choose } = props;
  const item = useRef<HTMLLIElement>(null);
  const near = useNear(item);
  return (
    <li ref={item} class="tag-item" data-id={listing.id}>
      {chosen === undefined ? (
        <a class="tag" href={`/listing/${listing.id}`}>
          <Tag {...props} near={near} />
        </a>
      ) : (
        <label class={chosen ? "tag tag-choice tag-chosen" : "tag tag-choice"}>
          <input type="checkbox" checked={chosen} onChange={() => choose?.(listing.id)} />
          <Tag {...props} near={near} />
        </label>
      )}
    </li>
  );
}

function Tag({ listing, kind, catalogue, currency, near }: CardProps & { near: boolean }) {
  const title = listingTitle(listing.title, kind === "" ? undefined : kind);
  const seen = useGlance(listing, kind === "" ? undefined : catalogue?.carried, near);
  return (
    <>
      {listing.changedAfterDelete && <p class="tag-alert">{words.changedAfterDelete}</p>}
      <div class="tag-head">
        {listing.photo !== undefined &&
          (near ? (
            <PhotoImage hash={listing.photo} alt={photoWords.alt(1, title)} class="tag-photo" />
          ) : (
            <span class="photo-gap tag-photo" />
          ))}
        <div class="tag-words">
          <h2 class="tag-title" dir="auto">
            {title}
          </h2>
          <p class="quiet">{kind || (listing.rubric ? words.unknownKind : words.noKind)}</p>
          {listing.place && <p dir="auto">{listing.place}</p>}
        </div>
      </div>
      <div class="tag-foot">
        <p class="tag-price">
          {listing.asking === undefined ? (
            <span class="quiet">{words.noAsking}</span>
          ) : (
            <>
              <span class="quiet">{words.asking} </span>
              <b class="stamped">{showMoney(listing.asking, currency)}</b>
            </>
          )}
        </p>
        <Standing seen={seen} answered={listing.answered} />
      </div>
      <Marks listing={listing} />
    </>
  );
}

/** What was found, as far as it is known without asking the engine, and the verdict once it has answered. */
function Standing({ seen, answered }: { seen: Glance | undefined; answered: number }) {
  if (!seen) {
    return (
      <p class="tag-standing quiet figures">
        {answered === 0 ? findWords.notWalked : findWords.answered(answered)}
      </p>
    );
  }
  const { verdict, progress } = seen;
  if (progress.graded + progress.skipped === 0)
    return <p class="tag-standing quiet">{words.notWalked(progress.applies)}</p>;
  return (
    <div class="tag-standing">
      <Hazard word={verdict.hazard} small />
      <b>{verdict.title}</b>
      <span class="quiet figures">{words.checks(progress.graded, progress.applies, progress.skipped)}</span>
    </div>
  );
}

function Marks({ listing }: { listing: ListingSummary }) {
  const stand = standOf(listing);
  const said = SAID.some((one) => one === stand);
  const demo = isDemo(listing.note ?? "");
  const answers = listing.answers ?? [];
  if (!said && !listing.away && !demo && listing.conflicts === 0 && answers.length === 0) return null;
  return (
    <p class="tag-marks">
      <AnswerCount answers={answers} />
      {said && <span class="mark mark-said">{findWords.stands[stand]}</span>}
      {listing.away && <span class="mark">{findWords.away}</span>}
      {demo && <span class="mark">{words.demo}</span>}
      {listing.conflicts > 0 && <span class="mark mark-open">{words.conflicts(listing.conflicts)}</span>}
    </p>
  );
}
