import { useState } from "preact/hooks";
import { plain } from "../charts/format.ts";
import { checkAllPhotos, type PhotoCheck } from "../data/photo-proof.ts";
import { Banner } from "../parts/page.tsx";
import { photoHref } from "../parts/photos.tsx";
import { proofWords as words } from "../words/photo.ts";

type State =
  | { at: "idle" }
  | { at: "checking"; done: number; all: number }
  | { at: "done"; found: PhotoCheck }
  | { at: "failed"; problem: string };

/** Every photo of this device hashed again, with what came of it. */
export function PhotoCheckAll() {
  const [state, setState] = useState<State>({ at: "idle" });
  const check = () => {
    setState({ at: "checking", done: 0, all: 0 });
    checkAllPhotos((done, all) => setState({ at: "checking", done, all })).then(
      (found) => setState({ at: "done", found }),
      (cause: unknown) =>
        setState({ at: "failed", problem: cause instanceof Error ? cause.message : String(cause) }),
    );
  };
  return (
    <section class="block" aria-label={words.checkTitle}>
      <h2 class="block-title">{words.checkTitle}</h2>
      <p>{words.checkHint}</p>
      <button type="button" class="button" disabled={state.at === "checking"} onClick={check}>
        {state.at === "checking" ? words.checking(plain(state.done), plain(state.all)) : words.check}
      </button>
      {state.at === "failed" && (
        <Banner tone="problem" urgent>
          {state.problem}
        </Banner>
      )}
      {state.at === "done" && <Found found={state.found} />}
      <p class="quiet">{words.honest}</p>
    </section>
  );
}

function Found({ found }: { found: PhotoCheck }) {
  const lines: [string, number][] = [
    [words.countWhole, found.whole],
    [words.countMissing, found.missing],
    [words.countAltered, found.altered.length],
  ];
  return (
    <div role="status">
      <p>{words.checked}</p>
      <dl class="pairs figures">
        {lines.map(([title, n]) => (
          <div key={title} class="pair">
            <dt>{title}</dt>
            <dd>{plain(n)}</dd>
          </div>
        ))}
      </dl>
      {found.altered.length > 0 && (
        <Banner tone="problem" urgent>
          <p>{words.alteredWhy}</p>
          <ul class="ruled">
            {found.altered.slice(0, 50).map(({ hash, doc, check }) => (
              <li key={hash}>
                <a href={photoHref(doc, hash, check)}>{words.open(hash.slice(0, 12))}</a>
              </li>
            ))}
          </ul>
        </Banner>
      )}
    </div>
  );
}
