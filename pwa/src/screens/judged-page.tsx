import type { ComponentChildren } from "preact";
import type { Result } from "../generated/types.ts";
import { Hazard } from "../parts/hazard.tsx";
import { Banner, Page } from "../parts/page.tsx";
import { type ListingDoc, useListing } from "../parts/use-listing.ts";
import { type Judged, useResult } from "../parts/use-result.ts";
import { Derived } from "../parts/why.tsx";
import { resultScreenWords as words } from "../words/result.ts";
import { NoListing } from "./no-listing.tsx";

/** The frame of a screen that shows a judgement, with what to say while there is none. */
export function JudgedPage(props: {
  id: string;
  title: string;
  back: string;
  backTitle: string;
  actions?: ComponentChildren;
  /** The verdict stands over everything, on screens that do not open with it. */
  verdict?: boolean;
  /** Asks for a plan of so many minutes. */
  minutes?: number;
  children: (result: Result, listing: ListingDoc, judged: Judged) => ComponentChildren;
}) {
  const listing = useListing(props.id);
  const judged = useResult(props.id, { minutes: props.minutes });
  const frame = { title: props.title, back: props.back, backTitle: props.backTitle };
  if (listing?.empty) return <NoListing />;
  const { result, problem } = judged;
  return (
    <Page {...frame} actions={props.actions}>
      {listing && (
        <p class="subject" dir="auto">
          {listing.title}
        </p>
      )}
      {problem && (
        <Banner tone="problem" urgent>
          {!result && <p>{words.problemTitle}</p>}
          <p>{problem}</p>
          {!result && <p>{words.keptSafe}</p>}
        </Banner>
      )}
      {!problem && !result && (
        <p class="loading" role="status">
          {words.loading}
        </p>
      )}
      {props.verdict && result && (
        <a class="verdict-strip" href={`/listing/${props.id}/result`}>
          <Hazard word={result.verdict.hazard} small />
          <b>{result.verdict.title}</b>
        </a>
      )}
      {listing && result && <Derived why={result.why}>{props.children(result, listing, judged)}</Derived>}
    </Page>
  );
}
