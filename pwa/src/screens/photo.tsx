import { useEffect, useRef, useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import { moment, plain } from "../charts/format.ts";
import { photoPath } from "../data/photo.ts";
import { pathsOfPhoto } from "../data/photo-pair.ts";
import { canFetchAgain, fetchAgain } from "../data/photo-proof.ts";
import { isRecord } from "../data/shape.ts";
import { Fold } from "../parts/fold.tsx";
import { Page } from "../parts/page.tsx";
import { PhotoGone } from "../parts/photo-image.tsx";
import { save } from "../parts/save.ts";
import { type ListingDoc, useListing } from "../parts/use-listing.ts";
import { useRubric } from "../parts/use-rubric.ts";
import { useShop } from "../parts/use-shop.ts";
import { useShownPhoto } from "../parts/use-shown-photo.ts";
import { useWatch } from "../parts/use-watch.ts";
import { pageWords } from "../words/parts.ts";
import { proofWords, photoViewWords as words } from "../words/photo.ts";
import { photoWords } from "../words/photos.ts";
import { listingTitle } from "./listing-title.ts";
import { PhotoDraw } from "./photo-draw.tsx";
import { checkTitle } from "./value-words.ts";

/** One photo over the whole screen: drawn on, and with what it proves. */
export function PhotoScreen({ id, check, hash }: { id: string; check?: string; hash: string }) {
  const listing = useListing(id);
  const rubric = useRubric(listing?.values.get("rubric"));
  const back = check === undefined ? `/listing/${id}` : `/listing/${id}/walk/${check}`;
  if (!listing) {
    return (
      <Page title={photoWords.title} back={back} backTitle={words.back}>
        <p role="status">{pageWords.loading}</p>
      </Page>
    );
  }
  const photos = check === undefined ? listing.photos : listing.finding(check).photos;
  const at = photos.indexOf(hash);
  if (at < 0) {
    return (
      <Page title={words.none} back={back} backTitle={words.back}>
        <p>{words.noneWhy}</p>
      </Page>
    );
  }
  const of = listingTitle(listing.title, rubric?.kind);
  return (
    <PhotoDialog
      key={hash}
      listing={listing}
      check={check}
      hash={hash}
      title={words.title(at + 1, photos.length)}
      alt={photoWords.alt(at + 1, check === undefined ? of : checkTitle(rubric, check))}
      of={check === undefined ? of : `${checkTitle(rubric, check)}, ${of}`}
      back={back}
    />
  );
}

interface DialogProps {
  listing: ListingDoc;
  check: string | undefined;
  hash: string;
  title: string;
  alt: string;
  /** What it belongs to. */
  of: string;
  back: string;
}

function PhotoDialog(props: DialogProps) {
  const { listing, check, hash } = props;
  const dialog = useRef<HTMLDialogElement>(null);
  const { route } = useLocation();
  const shown = useShownPhoto(hash);
  const shop = useShop();
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const path = photoPath(hash, check);
  useEffect(() => {
    document.title = `${props.title} · Asfound`;
    dialog.current?.showModal();
  }, [props.title]);
  const remove = async () => {
    const changes = pathsOfPhoto(listing.values, path).map((gone) => ({
      doc: listing.doc,
      path: gone,
      value: null,
    }));
    const why = await save(photoWords.removeLabel, changes);
    if (why === undefined) route(props.back);
    else setProblem(why);
  };
  return (
    <dialog
      class="photo-view"
      ref={dialog}
      aria-labelledby="photo-title"
      onCancel={(e) => {
        e.preventDefault();
        route(props.back);
      }}
    >
      <div class="photo-head">
        <a class="button" href={props.back}>
          {words.back}
        </a>
        <h1 id="photo-title" class="photo-title">
          {props.title}
        </h1>
      </div>
      {shown?.state === "whole" && (
        <PhotoDraw
          doc={listing.doc}
          path={path}
          marks={listing.marks(hash, check)}
          photo={shown}
          title={props.alt}
          metric={shop?.units === "metric"}
        />
      )}
      {(shown?.state === "missing" || shown?.state === "altered") && (
        <div class="photo-lost" role="alert">
          <p>
            <PhotoGone hash={hash} state={shown.state} />
          </p>
          {shown.state === "altered" && <Altered hash={hash} />}
        </div>
      )}
      <Proof {...props} path={path} size={shown?.state === "whole" ? shown : undefined} />
      {problem && (
        <p class="field-problem" role="alert">
          {problem}
        </p>
      )}
      <button type="button" class="button button-away" onClick={() => void remove()}>
        {words.removePhoto}
      </button>
    </dialog>
  );
}

/** What can be done where the bytes are not the recorded ones. */
function Altered({ hash }: { hash: string }) {
  const can = useWatch(`again/${hash}`, () => canFetchAgain(hash)).value;
  return (
    <>
      <p>{proofWords.alteredWhy}</p>
      {can === true && (
        <button type="button" class="button" onClick={() => void fetchAgain(hash)}>
          {proofWords.again}
        </button>
      )}
      {can === false && <p>{proofWords.noAgain}</p>}
    </>
  );
}

function Proof(props: DialogProps & { path: string; size: { width: number; height: number } | undefined }) {
  const row = props.listing.values.get(props.path);
  const at = isRecord(row) && typeof row.at === "string" ? Date.parse(row.at) : Number.NaN;
  return (
    <section class="block" aria-label={proofWords.title}>
      <h2 class="block-title">{proofWords.title}</h2>
      <dl class="pairs figures">
        <dt>{proofWords.belongs}</dt>
        <dd dir="auto">{props.of}</dd>
        <dt>{proofWords.added}</dt>
        <dd>{Number.isNaN(at) ? proofWords.unknown : proofWords.clock(moment(at))}</dd>
        {props.size && (
          <>
            <dt>{proofWords.size}</dt>
            <dd>{proofWords.pixels(plain(props.size.width), plain(props.size.height))}</dd>
          </>
        )}
        <dt>{proofWords.print}</dt>
        <dd>
          <span class="stamped">{props.hash.slice(0, 12)}…</span>
        </dd>
      </dl>
      {props.size && <p>{proofWords.whole}</p>}
      <p class="quiet">{proofWords.honest}</p>
      <Fold summary={proofWords.printWhole}>
        <p class="stamped">{props.hash}</p>
      </Fold>
    </section>
  );
}
