import { useRef, useState } from "preact/hooks";
import { newId } from "../data/id.ts";
import type { Document } from "../generated/types.ts";
import { ChoiceField } from "../parts/field.tsx";
import { moment } from "../parts/moment.ts";
import { save } from "../parts/save.ts";
import type { ListingDoc } from "../parts/use-listing.ts";
import { useSyncStatus } from "../parts/use-live.ts";
import { type CreatedLink, createLink } from "../sync/links.ts";
import { linkWords as words } from "../words/hand-over.ts";
import { LinkAddress } from "./link-address.tsx";
import { type Paper, photoKeys } from "./use-paper.ts";

/** How long a link may be given for, days. */
const LASTS = ["7", "21", "60"];

/** Making a link of the paper shown; it needs the server, and says so where there is none. */
export function LinkPanel({ listing, paper }: { listing: ListingDoc; paper: Paper }) {
  const { serverSeen } = useSyncStatus();
  const [days, setDays] = useState("21");
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const [made, setMade] = useState<{ of: Document; link: CreatedLink } | undefined>(undefined);
  // Asked again after no answer came, the same id makes no second link.
  const asked = useRef<{ of: Document | undefined; days: string; id: string }>({
    of: undefined,
    days: "",
    id: "",
  });
  const { document } = paper;
  if (!document) return null;
  const make = async () => {
    setBusy(true);
    setProblem(undefined);
    if (asked.current.of !== document || asked.current.days !== days)
      asked.current = { of: document, days, id: newId() };
    const { id } = asked.current;
    try {
      const lines = answerable(document);
      const link = await createLink(document, photosFor(document, paper), {
        id,
        listing: listing.id,
        days: Number(days),
        lines,
      });
      const value = {
        url: link.url,
        created: new Date().toISOString(),
        expires: link.expires,
        lines,
        language: document.language,
        qr: link.qr,
        public: link.public,
      };
      setProblem(
        await save(words.label, [{ doc: listing.doc, path: `link/${id}`, value }], { undoable: false }),
      );
      setMade({ of: document, link });
    } catch (cause) {
      setProblem(cause instanceof Error ? cause.message : String(cause));
    }
    setBusy(false);
  };
  return (
    <section class="block link-panel" aria-label={words.title}>
      <h2 class="block-title">{words.title}</h2>
      <p>{words.lead}</p>
      {made?.of === document ? (
        <>
          <p role="status">{words.expires(moment(made.link.expires))}</p>
          <LinkAddress link={made.link} />
        </>
      ) : (
        <>
          {!serverSeen && <p>{words.noServer}</p>}
          <ChoiceField
            id="link/days"
            label={words.lasts}
            value={days}
            choices={LASTS.map((n) => ({ id: n, title: words.days(Number(n)) }))}
            row
            keep={(n) => {
              setDays(n);
              return undefined;
            }}
          />
          <button
            type="button"
            class="button button-main"
            disabled={busy || paper.toCopy > 0}
            onClick={() => void make()}
          >
            {busy ? words.making : words.make}
          </button>
        </>
      )}
      {problem && (
        <p class="field-problem" role="alert">
          {problem}
        </p>
      )}
    </section>
  );
}

/** Parts of the paper that the seller may answer. */
function answerable(document: Document): string[] {
  const ids: string[] = [];
  const gather = (blocks: Document["blocks"]) => {
    for (const block of blocks) {
      if (block.answer && block.id) ids.push(block.id);
      if (block.blocks) gather(block.blocks);
    }
  };
  gather(document.blocks);
  return ids;
}

/** A copy for each photo of the paper, and no other. */
function photosFor(document: Document, paper: Paper): Map<string, ArrayBuffer> {
  const photos = new Map<string, ArrayBuffer>();
  for (const key of photoKeys(document)) {
    const copy = paper.copies.get(key);
    if (copy) photos.set(key, copy.data);
  }
  return photos;
}
