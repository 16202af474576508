import "../style/visit.css";
import { useMemo, useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import { listingDoc, newId } from "../data/id.ts";
import { keepRubric } from "../data/rubric.ts";
import type { Proposal, Rubric } from "../generated/types.ts";
import { Banner, Page } from "../parts/page.tsx";
import { save } from "../parts/save.ts";
import { catalogueProblem, useCatalogue } from "../parts/use-catalogue.ts";
import { useNotice } from "../parts/use-notice.ts";
import { useShop } from "../parts/use-shop.ts";
import { newListingWords as words } from "../words/listings.ts";
import { noticeWords } from "../words/notice.ts";
import { pageWords } from "../words/parts.ts";
import { Quote } from "./notice-panel.tsx";
import { PasteField } from "./notice-paste.tsx";
import { longestText, sharedText } from "./shared-text.ts";
import { today } from "./today.ts";

/** What was pasted and not yet made a listing of, should the screen be left. */
let pasted = "";

/** One tap makes the listing, so nothing typed afterwards can be lost. */
export function NewListingScreen() {
  const catalogue = useCatalogue();
  const shop = useShop();
  const { route, query } = useLocation();
  const [text, setText] = useState(() => sharedText(query) || pasted);
  const [given] = useState(text !== "");
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const own = useMemo(() => catalogue?.own.map((o) => o.rubric) ?? [], [catalogue?.own]);
  const noticed = useNotice(text, shop, { own, date: today() });
  const paste = (next: string) => {
    pasted = next;
    setText(next);
  };
  const make = async (rubric: Rubric) => {
    const have = [...text].length;
    if (have > longestText) {
      setProblem(noticeWords.tooLong(have, longestText));
      return;
    }
    const id = newId();
    const doc = listingDoc(id);
    const { mark, changes } = await keepRubric(rubric);
    const why = await save(words.label(rubric.kind), [
      ...changes,
      { doc, path: "rubric", value: { ...mark } },
      { doc, path: "date", value: today() },
      ...(text.trim() === "" ? [] : [{ doc, path: "text", value: text.trim() }]),
    ]);
    if (why === undefined) {
      pasted = "";
      route(`/listing/${id}`, true);
    } else setProblem(why);
  };
  const spoken = (noticed?.proposals ?? []).filter((p) => p.field === "rubric");
  const more = new Set(noticed?.proposals.map((p) => p.field)).size - (spoken.length > 0 ? 1 : 0);
  return (
    <Page title={words.title} back="/" backTitle={pageWords.toListings}>
      {problem && (
        <Banner tone="problem" urgent>
          {problem}
        </Banner>
      )}
      <PasteField text={text} open={given} paste={paste} noticed={noticed} more={more} />
      <h2>{words.ask}</h2>
      <p class="quiet">{words.lead}</p>
      {!catalogue && <p role="status">{catalogueProblem.value ? words.none : pageWords.loading}</p>}
      {spoken.length > 0 && (
        <section class="block" aria-label={noticeWords.kinds}>
          <h3 class="small-head">{noticeWords.kinds}</h3>
          <ul class="tags">
            {spoken.map((p) => {
              const rubric = catalogue?.rubrics.find((r) => r.id === p.text);
              return rubric && <Kind key={rubric.id} rubric={rubric} proposal={p} make={make} />;
            })}
          </ul>
          <h3 class="small-head">{noticeWords.otherKinds}</h3>
        </section>
      )}
      <ul class="tags">
        {catalogue?.rubrics
          .filter((rubric) => !spoken.some((p) => p.text === rubric.id))
          .map((rubric) => (
            <Kind key={rubric.id} rubric={rubric} make={make} />
          ))}
      </ul>
    </Page>
  );
}

function Kind(props: { rubric: Rubric; proposal?: Proposal; make: (rubric: Rubric) => Promise<void> }) {
  const { rubric } = props;
  return (
    <li>
      <button type="button" class="tag kind" onClick={() => void props.make(rubric)}>
        <b class="tag-title">{rubric.kind}</b>
        {props.proposal ? (
          <Quote proposal={props.proposal} />
        ) : (
          <span class="kind-about">{rubric.about}</span>
        )}
        <span class="quiet figures">{words.parts(countOf(rubric), minutesOf(rubric))}</span>
      </button>
    </li>
  );
}

const checksOf = (rubric: Rubric) => rubric.sections.flatMap((section) => section.checks);
const countOf = (rubric: Rubric) => checksOf(rubric).length;
const minutesOf = (rubric: Rubric) => Math.round(checksOf(rubric).reduce((sum, c) => sum + c.minutes, 0));
