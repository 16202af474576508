import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { handOverOf, type Left, leaving, telling } from "../data/hand-over.ts";
import { notHere } from "../data/photo-copy.ts";
import type { Check, Result } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { PhotoImage } from "../parts/photo-image.tsx";
import { save } from "../parts/save.ts";
import type { ListingDoc } from "../parts/use-listing.ts";
import { useWatch } from "../parts/use-watch.ts";
import { handOverWords as words } from "../words/hand-over.ts";
import { rounded } from "./amounts.tsx";
import type { Lookup } from "./rubric-lookup.ts";

interface Item {
  id: string;
  title: string;
  aside?: string | undefined;
}

/** Lines, findings and photos, each of which can be taken out. */
export function GoesIn(props: { listing: ListingDoc; result: Result; lookup: Lookup }) {
  const { listing, result, lookup } = props;
  const { left } = handOverOf(listing.values);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const put = (what: Left, label: string) => (ids: readonly string[], goesIn: boolean) =>
    void save(words.set(label), leaving(listing.doc, what, ids, goesIn)).then(setProblem);
  const lines = result.estimate.lines.map((line) => ({
    id: line.id,
    title: line.title,
    aside: rounded(line.mean, result.currency),
  }));
  const found = foundIn(listing, result, lookup);
  const checks = found.map(({ check, grade }) => ({
    id: check.id,
    title: check.title,
    aside: `${grade} ${lookup.grade(grade)}`,
  }));
  return (
    <section class="block" aria-label={words.goesIn}>
      <h2 class="block-title">{words.goesIn}</h2>
      <p class="hint">{words.goesInHint}</p>
      {problem && (
        <p class="field-problem" role="alert">
          {problem}
        </p>
      )}
      <div>
        <Pick
          title={words.lines}
          none={words.noLines}
          items={lines}
          left={left.line}
          put={put("line", words.lines)}
        />
        <Pick
          title={words.checks}
          none={words.noChecks}
          items={checks}
          left={left.check}
          put={put("check", words.checks)}
        />
        <Photos
          found={found.filter((f) => !left.check.includes(f.check.id))}
          left={left.photo}
          put={put("photo", words.photos)}
        />
        <Notes listing={listing} found={found} tell={setProblem} />
      </div>
    </section>
  );
}

/** From this grade on the paper tells of a point: worn, bad, failed. */
const FOUND = 2;

interface Found {
  check: Check;
  grade: number;
  note: string;
  photos: string[];
}

/** What was found, by the grades that count, the worst first and then in the order of the walkaround. */
function foundIn(listing: ListingDoc, result: Result, lookup: Lookup): Found[] {
  const found: Found[] = [];
  for (const { check: id, applies, grade } of result.checks) {
    const check = lookup.check(id);
    if (!check || !applies || grade === null || grade > FOUND) continue;
    const { note, photos } = listing.finding(id);
    found.push({ check, grade, note: note.trim(), photos });
  }
  return found.sort((a, b) => a.grade - b.grade);
}

type Put = (ids: readonly string[], goesIn: boolean) => void;

function Pick(props: { title: string; none: string; items: Item[]; left: string[]; put: Put }) {
  const { title, items, put } = props;
  const left = new Set(props.left);
  if (items.length === 0) {
    return (
      <Fold summary={title} aside="0">
        <p>{props.none}</p>
      </Fold>
    );
  }
  const inside = items.filter((item) => !left.has(item.id)).length;
  return (
    <Fold summary={title} aside={words.in(inside, items.length)}>
      <All ids={items.map((item) => item.id)} inside={inside} put={put} />
      <fieldset class="choice">
        <legend class="seen-by-reader">{title}</legend>
        <div class="choice-list">
          {items.map((item) => (
            <Tick
              key={item.id}
              checked={!left.has(item.id)}
              put={(goesIn) => put([item.id], goesIn)}
              aside={item.aside}
            >
              {item.title}
            </Tick>
          ))}
        </div>
      </fieldset>
    </Fold>
  );
}

function All({ ids, inside, put }: { ids: string[]; inside: number; put: Put }) {
  return (
    <div class="button-row">
      <button type="button" class="button" disabled={inside === ids.length} onClick={() => put(ids, true)}>
        {words.takeAll}
      </button>
      <button type="button" class="button" disabled={inside === 0} onClick={() => put(ids, false)}>
        {words.leaveAll}
      </button>
    </div>
  );
}

function Tick(props: {
  checked: boolean;
  put: (goesIn: boolean) => void;
  aside?: string | undefined;
  children: ComponentChildren;
}) {
  return (
    <label class="choice-item">
      <input type="checkbox" checked={props.checked} onChange={(e) => props.put(e.currentTarget.checked)} />
      <span dir="auto">
        {props.children}
        {props.aside && <span class="row-note figures">{props.aside}</span>}
      </span>
    </label>
  );
}

/** Every photo that could go in: those of what was found and is not taken out. */
function Photos(props: { found: Found[]; left: string[]; put: Put }) {
  const seen = new Set<string>();
  const photos = props.found
    .flatMap(({ check, photos }) => photos.map((hash) => ({ hash, of: check.title })))
    .filter(({ hash }) => !seen.has(hash) && seen.add(hash));
  const hashes = photos.map((p) => p.hash);
  const missing = useWatch(`missing/${hashes.join()}`, () => notHere(hashes)).value ?? [];
  const left = new Set(props.left);
  const inside = hashes.filter((hash) => !left.has(hash)).length;
  if (photos.length === 0) {
    return (
      <Fold summary={words.photos} aside="0">
        <p>{words.noPhotos}</p>
      </Fold>
    );
  }
  const absent = missing.filter((hash) => !left.has(hash)).length;
  return (
    <Fold summary={words.photos} aside={words.in(inside, photos.length)}>
      <All ids={hashes} inside={inside} put={props.put} />
      {absent > 0 && <p class="hint">{words.photoMissing(absent)}</p>}
      <ul class="photo-grid">
        {photos.map(({ hash, of }, i) => (
          <li key={hash}>
            <label class={left.has(hash) ? "photo-pick photo-left" : "photo-pick"}>
              <input
                type="checkbox"
                aria-label={words.photoGoesIn(i + 1, of)}
                checked={!left.has(hash)}
                onChange={(e) => props.put([hash], e.currentTarget.checked)}
              />
              <PhotoImage hash={hash} alt="" class="photo-thumb" />
            </label>
          </li>
        ))}
      </ul>
    </Fold>
  );
}

/** Notes stay private, one by one, until the buyer lets the seller read them. */
function Notes(props: { listing: ListingDoc; found: Found[]; tell: (problem: string | undefined) => void }) {
  const { listing, found } = props;
  const told = new Set(handOverOf(listing.values).notes);
  const noted = found
    .filter((f) => f.note !== "")
    .map(({ check, note }) => ({ id: check.id, title: check.title, note }));
  if (noted.length === 0) return null;
  const inside = noted.filter((n) => told.has(n.id)).length;
  return (
    <Fold summary={words.notes} aside={words.in(inside, noted.length)}>
      <p class="hint">{words.notesHint}</p>
      <div class="choice-list">
        {noted.map((n) => (
          <Tick
            key={n.id}
            checked={told.has(n.id)}
            aside={n.note}
            put={(goesIn) =>
              void save(words.set(words.notes), [telling(listing.doc, n.id, goesIn)]).then(props.tell)
            }
          >
            {n.title}
          </Tick>
        ))}
      </div>
    </Fold>
  );
}
