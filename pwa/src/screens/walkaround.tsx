import { useState } from "preact/hooks";
import type { Section } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { Banner, Page } from "../parts/page.tsx";
import { useCatalogue } from "../parts/use-catalogue.ts";
import { nextOpen, type Stop, useWalk, type Walk } from "../parts/use-walk.ts";
import { pageWords } from "../words/parts.ts";
import { cautionWords, stateWords, walkWords as words } from "../words/walkaround.ts";
import { CautionCard, useCautionsRead } from "./cautions.tsx";
import { listingTitle } from "./listing-title.ts";
import { NoListing } from "./no-listing.tsx";
import { StopRow } from "./stop-row.tsx";

/** All checks of a listing in walking order, with what was found so far. */
export function WalkaroundScreen({ id }: { id: string }) {
  const walk = useWalk(id);
  const catalogue = useCatalogue();
  const [read, markRead] = useCautionsRead(id);
  if (walk?.listing.empty) return <NoListing />;
  const back = `/listing/${id}`;
  if (!walk?.ready) {
    return (
      <Page title={words.title} back={back} backTitle={words.back}>
        <p role="status">{pageWords.loading}</p>
        {walk?.judged.problem && <Banner tone="problem">{walk.judged.problem}</Banner>}
      </Page>
    );
  }
  if (!walk.rubric) return <NoKind back={back} />;
  const title = listingTitle(walk.listing.title, walk.rubric.kind);
  if (!read) {
    return (
      <Page
        key="cautions"
        title={cautionWords.title}
        back={back}
        backTitle={title}
        actions={
          <button type="button" class="button button-main" onClick={markRead}>
            {cautionWords.read}
          </button>
        }
      >
        <CautionCard rubric={walk.rubric} first />
      </Page>
    );
  }
  const goOn = nextOpen(walk.stops, undefined);
  return (
    <Page
      key="list"
      title={words.title}
      back={back}
      backTitle={title}
      actions={
        goOn ? (
          <a class="button button-main" href={`${back}/walk/${goOn.check.id}`}>
            {words.jump}
          </a>
        ) : (
          <a class="button button-main" href={`${back}/result`}>
            {words.toResult}
          </a>
        )
      }
    >
      <StopList walk={walk} grades={catalogue?.grades ?? []} />
    </Page>
  );
}

function NoKind({ back }: { back: string }) {
  return (
    <Page
      title={words.title}
      back={back}
      backTitle={words.back}
      actions={
        <a class="button button-main" href={back}>
          {words.setKind}
        </a>
      }
    >
      <p>{words.noRubric}</p>
    </Page>
  );
}

function StopList({ walk, grades }: { walk: Walk; grades: string[] }) {
  const [onlyLeft, setOnlyLeft] = useState(false);
  const { stops, rubric, judged } = walk;
  const left = stops.filter((s) => s.open);
  const shown = onlyLeft ? left : stops;
  const minutes = Math.ceil(left.reduce((sum, s) => sum + s.check.minutes, 0));
  return (
    <>
      {judged.problem && (
        <Banner tone="problem">
          <p>{judged.problem}</p>
          {!judged.result && <p>{words.engine}</p>}
        </Banner>
      )}
      <Progress
        checked={stops.filter((s) => s.grade !== undefined).length}
        left={left.length}
        all={stops.length}
        minutes={minutes}
      />
      <fieldset class="choice filter">
        <legend class="seen-by-reader">{words.filter}</legend>
        <div class="choice-row">
          <label class="choice-item">
            <input type="radio" name="filter" checked={!onlyLeft} onChange={() => setOnlyLeft(false)} />
            <span>{words.all(stops.length)}</span>
          </label>
          <label class="choice-item">
            <input type="radio" name="filter" checked={onlyLeft} onChange={() => setOnlyLeft(true)} />
            <span>{words.left(left.length)}</span>
          </label>
        </div>
      </fieldset>
      {left.length === 0 && <p>{words.noneLeft}</p>}
      {rubric?.sections.map((section) => (
        <SectionList
          key={section.id}
          section={section}
          stops={shown.filter((s) => s.section.id === section.id)}
          listing={walk.listing.id}
          grades={grades}
        />
      ))}
      {rubric && (
        <Fold summary={cautionWords.again}>
          <CautionCard rubric={rubric} />
        </Fold>
      )}
    </>
  );
}

function Progress(props: { checked: number; left: number; all: number; minutes: number }) {
  const { checked, left, all, minutes } = props;
  const said = words.progress(checked, all, all - left - checked);
  return (
    <div class="walk-progress">
      <progress class="progress" value={all - left} max={Math.max(all, 1)} aria-label={said} />
      <p class="figures">
        <b>{said}</b>
        {left > 0 && <span class="quiet"> · {words.minutesLeft(minutes)}</span>}
      </p>
    </div>
  );
}

function SectionList(props: { section: Section; stops: Stop[]; listing: string; grades: string[] }) {
  if (props.stops.length === 0) return null;
  return (
    <section class="walk-section">
      <h2 class="walk-title">{props.section.title}</h2>
      <p class="walk-state">{stateWords[props.section.state] ?? props.section.state}</p>
      {props.section.caution && <p class="walk-caution">{props.section.caution}</p>}
      <ol class="stops">
        {props.stops.map((stop) => (
          <li key={stop.check.id}>
            <StopRow
              stop={stop}
              href={`/listing/${props.listing}/walk/${stop.check.id}`}
              grades={props.grades}
            />
          </li>
        ))}
      </ol>
    </section>
  );
}
