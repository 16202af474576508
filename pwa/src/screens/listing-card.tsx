import { loadAppraisalFile } from "../data/file.ts";
import { answersOf } from "../data/links.ts";
import type { ListingSummary } from "../data/read.ts";
import { doc } from "../data/read.ts";
import type { Result } from "../generated/types.ts";
import { glance } from "../parts/glance.ts";
import { Hazard } from "../parts/hazard.tsx";
import { showMoney } from "../parts/money.ts";
import { PhotoImage } from "../parts/photo-image.tsx";
import { AnswerCount } from "../parts/seller-says.tsx";
import type { ShopCatalogue } from "../parts/use-catalogue.ts";
import { useRubric } from "../parts/use-rubric.ts";
import { useWatch } from "../parts/use-watch.ts";
import { listingsWords as words } from "../words/listings.ts";
import { photoWords } from "../words/photos.ts";
import { isDemo, listingTitle } from "./listing-title.ts";

/** One listing as an inspection tag. */
export function ListingCard(props: {
  listing: ListingSummary;
  catalogue: ShopCatalogue | undefined;
  currency: string;
}) {
  const { listing, catalogue } = props;
  const kind = useRubric(listing.rubric && { ...listing.rubric })?.kind;
  const title = listingTitle(listing.title, kind);
  const found = useWatch(`card/${listing.id}/${catalogue ? "ready" : ""}`, async () => {
    const stored = await doc(listing.doc);
    const note = stored.values.get("note");
    const demo = isDemo(typeof note === "string" ? note : "");
    const answers = answersOf(stored.values);
    if (!catalogue || kind === undefined) return { demo, answers, seen: undefined };
    const { file } = await loadAppraisalFile(listing.doc, catalogue.carried);
    return { demo, answers, seen: await glance(listing.id, file).catch(() => undefined) };
  }).value;
  return (
    <a class="tag" href={`/listing/${listing.id}`}>
      {listing.changedAfterDelete && <p class="tag-alert">{words.changedAfterDelete}</p>}
      <div class="tag-head">
        {listing.photo !== undefined && (
          <PhotoImage hash={listing.photo} alt={photoWords.alt(1, title)} class="tag-photo" />
        )}
        <div class="tag-words">
          <h2 class="tag-title" dir="auto">
            {title}
          </h2>
          <p class="quiet">{kind ?? (listing.rubric ? words.unknownKind : words.noKind)}</p>
          {listing.place && <p dir="auto">{listing.place}</p>}
        </div>
      </div>
      <div class="tag-foot">
        <p class="tag-price">
          <span class="quiet">{words.asking} </span>
          {listing.asking === undefined ? (
            words.noAsking
          ) : (
            <b class="stamped">{showMoney(listing.asking, props.currency)}</b>
          )}
        </p>
        {found?.seen && <Standing result={found.seen} />}
      </div>
      {(found?.demo || listing.conflicts > 0 || (found?.answers.length ?? 0) > 0) && (
        <p class="tag-marks">
          <AnswerCount answers={found?.answers ?? []} />
          {found?.demo && <span class="mark">{words.demo}</span>}
          {listing.conflicts > 0 && <span class="mark mark-open">{words.conflicts(listing.conflicts)}</span>}
        </p>
      )}
    </a>
  );
}

function Standing({ result }: { result: Pick<Result, "verdict" | "progress"> }) {
  const { verdict, progress } = result;
  const done = progress.graded + progress.skipped;
  if (done === 0) return <p class="quiet">{words.notWalked(progress.applies)}</p>;
  return (
    <div class="tag-standing">
      <Hazard word={verdict.hazard} small />
      <b>{verdict.title}</b>
      <span class="quiet figures">{words.checks(progress.graded, progress.applies, progress.skipped)}</span>
    </div>
  );
}
