import { useId, useState } from "preact/hooks";
import { listingId } from "../data/id.ts";
import { addPhoto, photoPath } from "../data/photo.ts";
import type { PhotoMark } from "../data/photo-marks.ts";
import { photoWords as words } from "../words/photos.ts";
import { PhotoImage } from "./photo-image.tsx";
import { save } from "./save.ts";

/**
 * Photos of a listing or of one check: by camera or from files, several at
 * once. A picture that cannot be kept is named here; nothing else is touched.
 */
export function Photos(props: {
  doc: string;
  check?: string;
  of: string;
  hashes: string[];
  /** What is drawn over a photo. */
  marks: (hash: string) => readonly PhotoMark[];
}) {
  const [adding, setAdding] = useState(0);
  const [problems, setProblems] = useState<string[]>([]);

  const add = async (files: File[]) => {
    setProblems([]);
    setAdding((n) => n + files.length);
    for (const file of files) {
      const why = await keep(file, props.doc, props.check);
      if (why !== undefined) {
        setProblems((before) => [...before, words.problem(file.name || words.unnamed, why)]);
      }
      setAdding((n) => n - 1);
    }
  };

  return (
    <div class="block photos">
      {props.hashes.length > 0 && (
        <ul class="photo-grid">
          {props.hashes.map((hash, i) => (
            <li key={hash}>
              <a
                class="photo-open"
                aria-label={words.open(i + 1)}
                href={photoHref(props.doc, hash, props.check)}
              >
                <PhotoImage
                  hash={hash}
                  alt={words.alt(i + 1, props.of)}
                  class="photo-thumb"
                  marks={props.marks(hash)}
                />
              </a>
            </li>
          ))}
        </ul>
      )}
      {adding > 0 && <p role="status">{words.adding(adding)}</p>}
      {problems.map((why) => (
        <p key={why} class="field-problem" role="alert">
          {why}
        </p>
      ))}
      <div class="button-row">
        <PhotoInput label={words.take} camera add={(files) => void add(files)} />
        <PhotoInput label={words.choose} add={(files) => void add(files)} />
      </div>
    </div>
  );
}

/** Where one photo stands alone. */
export function photoHref(doc: string, hash: string, check: string | undefined): string {
  const listing = `/listing/${listingId(doc) ?? ""}`;
  return check === undefined ? `${listing}/photo/${hash}` : `${listing}/walk/${check}/photo/${hash}`;
}

/** Keeps one picture and enters it; answers why not. */
async function keep(file: File, doc: string, check: string | undefined): Promise<string | undefined> {
  try {
    const { hash, at, width, height } = await addPhoto(file);
    return await save(words.label, [{ doc, path: photoPath(hash, check), value: { at, width, height } }]);
  } catch (cause) {
    return cause instanceof Error ? cause.message : String(cause);
  }
}

function PhotoInput(props: { label: string; camera?: boolean; add: (files: File[]) => void }) {
  const dom = useId();
  return (
    <div class="photo-input">
      <input
        id={dom}
        class="photo-file"
        type="file"
        accept="image/*"
        {...(props.camera ? { capture: "environment" as const } : { multiple: true })}
        onChange={(e) => {
          const files = [...(e.currentTarget.files ?? [])];
          // The same file may be chosen again after it was removed.
          e.currentTarget.value = "";
          if (files.length > 0) props.add(files);
        }}
      />
      <label class="button" for={dom}>
        {props.label}
      </label>
    </div>
  );
}
