import { useState } from "preact/hooks";
import { answersOf } from "../data/links.ts";
import type { Result } from "../generated/types.ts";
import { ChoiceField } from "../parts/field.tsx";
import { Fold } from "../parts/fold.tsx";
import { Hazard } from "../parts/hazard.tsx";
import { listAddress } from "../parts/list-place.ts";
import { Banner, Page } from "../parts/page.tsx";
import { Photos } from "../parts/photos.tsx";
import { save, saveValue } from "../parts/save.ts";
import { AnswerCount } from "../parts/seller-says.tsx";
import { useCatalogue } from "../parts/use-catalogue.ts";
import { type ListingDoc, useListing } from "../parts/use-listing.ts";
import { useResult } from "../parts/use-result.ts";
import { useRubric } from "../parts/use-rubric.ts";
import { useShop } from "../parts/use-shop.ts";
import { fitWords } from "../words/fit.ts";
import { handOverWords } from "../words/hand-over.ts";
import { homeWords } from "../words/home.ts";
import { listingWords as words } from "../words/listing.ts";
import { paperWords } from "../words/papers.ts";
import { pageWords } from "../words/parts.ts";
import { visitWords } from "../words/visit.ts";
import { ConflictList } from "./conflict-list.tsx";
import { type FieldsProps, ListingFields } from "./listing-fields.tsx";
import { ListingRecord } from "./listing-record.tsx";
import { ListingStand, PutAway } from "./listing-stand.tsx";
import { listingTitle } from "./listing-title.ts";
import { NoListing } from "./no-listing.tsx";
import { NoticePanel } from "./notice-panel.tsx";

/** One listing: where its appraisal stands, and everything entered about it. */
export function ListingScreen({ id }: { id: string }) {
  const listing = useListing(id);
  if (!listing) return <Waiting />;
  if (listing.empty) return <NoListing />;
  return <Overview key={id} listing={listing} />;
}

function Waiting() {
  return (
    <Page title={words.fields} back="/" backTitle={pageWords.toListings}>
      <p role="status">{pageWords.loading}</p>
    </Page>
  );
}

function Overview({ listing }: { listing: ListingDoc }) {
  const catalogue = useCatalogue();
  const shop = useShop();
  const { result } = useResult(listing.id);
  const rubric = useRubric(listing.values.get("rubric"));
  const props: FieldsProps = { listing, catalogue, rubric, shop };
  // A listing just made is filled in first; one known is gone on with.
  const [fresh] = useState(listing.title.trim() === "");
  const started = isStarted(listing, result);
  return (
    <Page
      title={listingTitle(listing.title, rubric?.kind)}
      back={listAddress()}
      backTitle={pageWords.toListings}
      actions={
        <>
          <a class="button" href={`/listing/${listing.id}/result`}>
            {words.result}
          </a>
          <a class="button button-main" href={`/listing/${listing.id}/walk`}>
            {started ? words.walkOn : words.walkGo}
          </a>
        </>
      }
    >
      {listing.deleted && <Deleted listing={listing} />}
      <PutAway listing={listing} />
      {started && result && <Standing result={result} />}
      <ConflictList conflicts={listing.conflicts} rubric={rubric} currency={shop?.currency ?? "USD"} />
      {!fresh && <Steps listing={listing} result={result} sized={rubric?.body !== undefined} />}
      <NoticePanel {...props} open={fresh} />
      <Facts {...props} />
      <ListingFields {...props} />
      <section class="block" aria-label={words.photos}>
        <h2 class="block-title">{words.photos}</h2>
        <Photos
          doc={listing.doc}
          of={listingTitle(listing.title, rubric?.kind)}
          hashes={listing.photos}
          marks={(hash) => listing.marks(hash)}
        />
      </section>
      {fresh && <Steps listing={listing} result={result} sized={rubric?.body !== undefined} />}
      <ListingStand listing={listing} title={listingTitle(listing.title, rubric?.kind)} />
      <ListingRecord {...props} />
    </Page>
  );
}

const ANSWER = /^finding\/[^/]+\/answer$/;

/** Some check has an answer that counts; until the engine has said which do, any answer. */
function isStarted(listing: ListingDoc, result: Result | undefined): boolean {
  if (result) return result.progress.graded + result.progress.skipped > 0;
  return [...listing.values].some(([path, value]) => value !== null && ANSWER.test(path));
}

function Standing({ result }: { result: Result }) {
  return (
    <div class="standing">
      <Hazard word={result.verdict.hazard} />
      <p>
        <b>{result.verdict.title}.</b> {result.verdict.sentence}
      </p>
    </div>
  );
}

function Deleted({ listing }: { listing: ListingDoc }) {
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const bringBack = () =>
    void save(words.backLabel, [{ doc: listing.doc, path: "deleted", value: null }]).then(setProblem);
  return (
    <Banner tone="note">
      <p>{words.deleted}</p>
      {problem && <p class="field-problem">{problem}</p>}
      <button type="button" class="button" onClick={bringBack}>
        {words.bringBack}
      </button>
    </Banner>
  );
}

/** `sized`: the rubric tells the size of its kind, so that fit and way home can be worked out. */
function Steps(props: { listing: ListingDoc; result: Result | undefined; sized: boolean }) {
  const { listing, result } = props;
  const walked = !isStarted(listing, result)
    ? words.notStarted
    : result && words.progress(result.progress.graded, result.progress.applies, result.progress.skipped);
  const base = `/listing/${listing.id}`;
  const answers = answersOf(listing.values);
  const steps = [
    { href: `${base}/visit`, title: visitWords.step, aside: visitWords.stepAside },
    { href: `${base}/walk`, title: words.walk, aside: walked },
    { href: `${base}/result`, title: words.result, aside: words.resultAside },
    { href: `${base}/estimate`, title: words.estimate, aside: words.estimateAside },
    { href: `${base}/offer`, title: words.offer, aside: words.offerAside },
    {
      href: `${base}/hand-over`,
      title: handOverWords.step,
      aside: answers.length > 0 ? <AnswerCount answers={answers} /> : handOverWords.stepAside,
    },
    { href: `${base}/papers`, title: paperWords.step, aside: paperWords.stepAside },
    ...(props.sized
      ? [
          { href: `${base}/fit`, title: fitWords.step, aside: fitWords.findings[result?.fit?.finding ?? ""] },
          {
            href: `${base}/home`,
            title: homeWords.step,
            aside: homeWords.asides[result?.home?.finding ?? ""],
          },
        ]
      : []),
  ];
  return (
    <nav class="block" aria-label={words.steps}>
      <ul class="ways">
        {steps.map((s) => (
          <li key={s.href}>
            <a class="way" href={s.href}>
              <b>{s.title}</b>
              <span class="quiet figures">{s.aside}</span>
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}

/** What the rubric must know of the equipment before it can say which checks apply. */
function Facts({ listing, rubric }: FieldsProps) {
  if (!rubric) return null;
  const facts = rubric.facts ?? [];
  const about = (
    <Fold summary={words.aboutKind}>
      <p>{rubric.about}</p>
    </Fold>
  );
  if (facts.length === 0) return about;
  return (
    <section class="block" aria-label={words.facts}>
      <h2 class="block-title">{words.facts}</h2>
      {about}
      <p class="quiet">{words.factsHint}</p>
      {facts.map((fact) => (
        <ChoiceField
          key={fact.id}
          id={`${listing.doc}/fact/${fact.id}`}
          label={fact.ask}
          value={listing.facts[fact.id] ?? ""}
          choices={fact.options}
          row
          keep={(option) => saveValue(words.factLabel(fact.ask), listing.doc, `fact/${fact.id}`, option)}
        />
      ))}
    </section>
  );
}
