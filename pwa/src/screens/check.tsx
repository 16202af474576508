import { useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import type { Catalogue } from "../generated/types.ts";
import { TextField } from "../parts/field.tsx";
import { Banner, Page } from "../parts/page.tsx";
import { Photos } from "../parts/photos.tsx";
import { save, saveValue } from "../parts/save.ts";
import { useCatalogue } from "../parts/use-catalogue.ts";
import { useShop } from "../parts/use-shop.ts";
import { nextOpen, type Stop, useWalk, type Walk } from "../parts/use-walk.ts";
import { pageWords } from "../words/parts.ts";
import { cautionWords, walkWords, checkWords as words } from "../words/walkaround.ts";
import { CautionCard, useCautionsRead } from "./cautions.tsx";
import { CheckGrades, CheckSkip } from "./check-grades.tsx";
import { DangerFailed, HeldBlock, Instructions, Lead, OnlyIf } from "./check-lead.tsx";
import { CheckMeasure } from "./check-measure.tsx";
import { ConflictList } from "./conflict-list.tsx";
import { gradeNumber, offered } from "./grade-words.ts";
import { NoListing } from "./no-listing.tsx";
import { PhotoPairs } from "./photo-pairs.tsx";
import { useCheckKeys } from "./use-check-keys.ts";
import { givenTo, useLimit } from "./use-limit.ts";
import { useMeasured } from "./use-measured.ts";

/** One check of the walkaround. */
export function CheckScreen({ id, check }: { id: string; check: string }) {
  const walk = useWalk(id);
  const catalogue = useCatalogue();
  const [read, markRead] = useCautionsRead(id);
  if (walk?.listing.empty) return <NoListing />;
  const list = `/listing/${id}/walk`;
  if (!walk || !catalogue || !walk.ready) {
    return (
      <Page title={walkWords.title} back={list} backTitle={walkWords.backToList}>
        <p role="status">{pageWords.loading}</p>
      </Page>
    );
  }
  const at = walk.stops.findIndex((s) => s.check.id === check);
  const stop = walk.stops[at];
  if (!stop || !walk.rubric) return <NoCheck list={list} known={isKnown(walk, check)} />;
  if (!read) {
    return (
      <Page
        key="cautions"
        title={cautionWords.title}
        back={list}
        backTitle={walkWords.backToList}
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
  return <OneCheck key={check} walk={walk} at={at} stop={stop} catalogue={catalogue} list={list} />;
}

const isKnown = (walk: Walk, check: string) =>
  walk.rubric?.sections.some((s) => s.checks.some((c) => c.id === check)) ?? false;

function NoCheck({ list, known }: { list: string; known: boolean }) {
  return (
    <Page
      title={walkWords.title}
      back={list}
      backTitle={walkWords.backToList}
      actions={
        <a class="button button-main" href={list}>
          {words.toList}
        </a>
      }
    >
      <p>{known ? walkWords.notApplying : walkWords.unknownCheck}</p>
    </Page>
  );
}

interface OneProps {
  walk: Walk;
  at: number;
  stop: Stop;
  catalogue: Catalogue;
  list: string;
}

function OneCheck({ walk, at, stop, catalogue, list }: OneProps) {
  const { check, section, finding } = stop;
  const { doc } = walk.listing;
  const shop = useShop();
  const { route } = useLocation();
  const [said, setSaid] = useState<{ good?: string; problem?: string }>({});
  const definition = check.limit && catalogue.limits.find((l) => l.name === check.limit?.name);
  const measuring = useMeasured(words.measuredLabel(check.title), doc, check.id, finding);
  const given = definition && givenTo(definition, check.limit?.fixed ?? {}, finding);
  const view = useLimit(definition?.name ?? "", given);
  const proposed = proposedBy(stop, view.result?.finding);
  const beyond = view.result?.finding === "beyond limit";
  const counts =
    beyond && proposed !== undefined ? Math.min(finding.grade ?? proposed, proposed) : stop.grade;
  const failed = check.hazard === "danger" && counts === 0;
  const held = stop.judged?.held;

  const answer = async (
    label: string,
    value: { grade: number } | { skipped: string } | null,
    told: string,
  ) => {
    const problem = await save(label, [{ doc, path: `finding/${check.id}/answer`, value }]);
    setSaid(problem === undefined ? { good: told } : { problem });
  };
  const grade = (n: number) => {
    if (!offered(check).includes(n) || (beyond && proposed !== undefined && n > proposed)) return;
    void answer(
      words.gradeLabel(check.title),
      { grade: n },
      words.saved(`${n} ${catalogue.grades[n] ?? ""}`),
    );
  };
  const skip = (reason: string) => {
    const title = catalogue.reasons.find((r) => r.id === reason)?.title ?? reason;
    void answer(words.skipLabel(check.title), { skipped: reason }, words.skipped(title));
  };

  const hrefOf = (other: Stop | undefined) => (other ? `${list}/${other.check.id}` : list);
  const before = at > 0 ? walk.stops[at - 1] : undefined;
  const after = walk.stops[at + 1];
  const open = nextOpen(walk.stops, check.id);
  useCheckKeys({ grade, next: () => route(hrefOf(after)), previous: () => route(hrefOf(before)) });
  const answered = finding.grade !== undefined || finding.skipped !== undefined;

  return (
    <Page
      title={check.title}
      back={list}
      backTitle={walkWords.backToList}
      lead={<Lead stop={stop} place={words.place(at + 1, walk.stops.length)} />}
      actions={
        <>
          <a class="button" href={hrefOf(before)}>
            {before ? words.previous : words.toList}
          </a>
          <a class="button" href={hrefOf(after)}>
            {after ? words.next : words.toList}
          </a>
          <a class="button button-main" href={hrefOf(open)}>
            {open ? words.nextOpen : words.toList}
          </a>
        </>
      }
    >
      <ConflictList
        conflicts={walk.listing.conflicts.filter((c) => c.path.startsWith(`finding/${check.id}/`))}
        rubric={walk.rubric}
        currency={shop?.currency ?? "USD"}
      />
      {failed && !said.good && <DangerFailed id={walk.listing.id} />}
      {held && <HeldBlock held={held} />}
      {walk.rubric && (
        <OnlyIf rubric={walk.rubric} stop={stop} facts={walk.listing.facts} id={walk.listing.id} />
      )}
      <Instructions stop={stop} first={before?.section.id !== section.id} />
      {definition && check.limit && (
        <CheckMeasure
          id={`${doc}/finding/${check.id}`}
          here={`${list}/${check.id}`}
          limit={check.limit}
          definition={definition}
          catalogue={catalogue}
          metric={shop?.units === "metric"}
          finding={finding}
          measuring={measuring}
          view={view}
        />
      )}
      {said.problem && (
        <Banner tone="problem" urgent>
          {said.problem}
        </Banner>
      )}
      <CheckGrades
        check={check}
        catalogue={catalogue}
        given={finding.grade}
        proposed={proposed}
        cap={beyond ? proposed : undefined}
        choose={grade}
      />
      {/* Where the thumb just was: the top of the page is out of sight. */}
      {failed && said.good && <DangerFailed id={walk.listing.id} />}
      <CheckSkip catalogue={catalogue} given={finding.skipped} choose={skip} />
      <p class="seen-by-reader" role="status">
        {said.good}
      </p>
      {answered && (
        <button
          type="button"
          class="button button-plain"
          onClick={() => void answer(words.clearLabel(check.title), null, words.clearLabel(check.title))}
        >
          {words.clear}
        </button>
      )}
      <TextField
        id={`${doc}/finding/${check.id}/note`}
        label={words.note}
        hint={words.noteHint}
        lines={2}
        most={20_000}
        value={finding.note}
        keep={(text) =>
          saveValue(
            words.noteLabel(check.title),
            doc,
            `finding/${check.id}/note`,
            text.trim() === "" ? null : text,
          )
        }
      />
      <section class="block" aria-label={words.photos}>
        <h2 class="block-title">{words.photos}</h2>
        <Photos
          doc={doc}
          check={check.id}
          of={check.title}
          hashes={finding.photos}
          marks={(hash) => walk.listing.marks(hash, check.id)}
        />
        <PhotoPairs listing={walk.listing} check={check.id} of={check.title} />
      </section>
      <p class="quiet keys">{words.keys}</p>
    </Page>
  );
}

/** The grade the rubric ties to what the measurement came to. */
function proposedBy(stop: Stop, found: string | undefined): number | undefined {
  const { limit } = stop.check;
  if (!limit || found === undefined) return undefined;
  if (found === "within limit") return gradeNumber(limit.within);
  if (found === "watch") return gradeNumber(limit.watch);
  return found === "beyond limit" ? gradeNumber(limit.beyond) : undefined;
}
