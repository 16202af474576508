import { useState } from "preact/hooks";
import { newId } from "../data/id.ts";
import { MOST_PAIRS, pairPath } from "../data/photo-pair.ts";
import { Fold } from "../parts/fold.tsx";
import { PhotoImage } from "../parts/photo-image.tsx";
import { photoHref } from "../parts/photos.tsx";
import { save } from "../parts/save.ts";
import type { ListingDoc } from "../parts/use-listing.ts";
import { pairWords as words } from "../words/photo.ts";
import { photoWords } from "../words/photos.ts";

interface PairsProps {
  listing: ListingDoc;
  check: string;
  /** Title of the check. */
  of: string;
}

/** Photos of one check that stand side by side, and putting two more so. */
export function PhotoPairs(props: PairsProps) {
  const { listing, check } = props;
  const { photos, pairs } = listing.finding(check);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  if (photos.length < 2) return null;
  const apart = (id: string) =>
    void save(words.removeLabel, [{ doc: listing.doc, path: pairPath(check, id), value: null }]).then(
      setProblem,
    );
  return (
    <>
      {pairs.length > 0 && <h3>{words.title}</h3>}
      {pairs.map((pair) => (
        <div key={pair.id} class="photo-pair">
          {([words.before, words.after] as const).map((side, i) => {
            const hash = i === 0 ? pair.before : pair.after;
            return (
              <figure key={side}>
                <a
                  class="photo-open"
                  aria-label={`${side}: ${photoWords.open(photos.indexOf(hash) + 1)}`}
                  href={photoHref(listing.doc, hash, check)}
                >
                  <PhotoImage
                    hash={hash}
                    alt={`${side}: ${photoWords.alt(photos.indexOf(hash) + 1, props.of)}`}
                    class="photo-side"
                    size="side"
                    marks={listing.marks(hash, check)}
                  />
                </a>
                <figcaption>{side}</figcaption>
              </figure>
            );
          })}
          <button type="button" class="button button-plain" onClick={() => apart(pair.id)}>
            {words.remove}
          </button>
        </div>
      ))}
      {problem && (
        <p class="field-problem" role="alert">
          {problem}
        </p>
      )}
      <Fold summary={words.choose}>
        {pairs.length < MOST_PAIRS ? <Choose {...props} photos={photos} /> : <p>{words.full(MOST_PAIRS)}</p>}
      </Fold>
    </>
  );
}

/** Two taps: the earlier photo, then the later one. */
function Choose({ listing, check, of, photos }: PairsProps & { photos: string[] }) {
  const [picked, setPicked] = useState<string[]>([]);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const [before, after] = picked.filter((hash) => photos.includes(hash));
  const as = (hash: string) => (hash === before ? words.before : hash === after ? words.after : "");
  const pick = (hash: string) => {
    if (picked.includes(hash)) setPicked(picked.filter((other) => other !== hash));
    else if (picked.length < 2) setPicked([...picked, hash]);
  };
  const keep = async () => {
    if (before === undefined || after === undefined) return;
    const why = await save(words.label, [
      { doc: listing.doc, path: pairPath(check, newId()), value: { before, after } },
    ]);
    setProblem(why);
    if (why === undefined) setPicked([]);
  };
  return (
    <div class="block">
      <p>{words.chooseHint}</p>
      <ul class="photo-grid">
        {photos.map((hash, i) => (
          <li key={hash}>
            <button
              type="button"
              class="photo-open"
              aria-pressed={picked.includes(hash)}
              aria-label={words.pick(i + 1, as(hash))}
              onClick={() => pick(hash)}
            >
              <PhotoImage
                hash={hash}
                alt={photoWords.alt(i + 1, of)}
                class="photo-thumb"
                marks={listing.marks(hash, check)}
              />
              <span class="photo-picked">{as(hash)}</span>
            </button>
          </li>
        ))}
      </ul>
      {problem && (
        <p class="field-problem" role="alert">
          {problem}
        </p>
      )}
      <div class="button-row">
        <button type="button" class="button" disabled={picked.length === 0} onClick={() => setPicked([])}>
          {words.again}
        </button>
        <button
          type="button"
          class="button button-main"
          disabled={after === undefined}
          onClick={() => void keep()}
        >
          {words.keep}
        </button>
      </div>
    </div>
  );
}
