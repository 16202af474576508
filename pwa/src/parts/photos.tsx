import { useEffect, useId, useRef, useState } from "preact/hooks";
import { addPhoto, photoPath } from "../data/photo.ts";
import { photoWords as words } from "../words/photos.ts";
import { PhotoImage } from "./photo-image.tsx";
import { save } from "./save.ts";

/**
 * Photos of a listing or of one check: by camera or from files, several at
 * once. A picture that cannot be kept is named here; nothing else is touched.
 */
export function Photos(props: { doc: string; check?: string; of: string; hashes: string[] }) {
  const [adding, setAdding] = useState(0);
  const [problems, setProblems] = useState<string[]>([]);
  const [open, setOpen] = useState<number | undefined>(undefined);

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
              <button
                type="button"
                class="photo-open"
                aria-label={words.open(i + 1)}
                onClick={() => setOpen(i)}
              >
                <PhotoImage hash={hash} alt={words.alt(i + 1, props.of)} class="photo-thumb" />
              </button>
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
      {open !== undefined && props.hashes[open] !== undefined && (
        <PhotoView
          hash={props.hashes[open]}
          alt={words.alt(open + 1, props.of)}
          close={() => setOpen(undefined)}
          remove={async () => {
            const hash = props.hashes[open];
            setOpen(undefined);
            if (hash === undefined) return;
            const path = photoPath(hash, props.check);
            const why = await save(words.removeLabel, [{ doc: props.doc, path, value: null }]);
            if (why !== undefined) setProblems([why]);
          }}
        />
      )}
    </div>
  );
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

/** One picture as large as the screen allows. */
function PhotoView(props: { hash: string; alt: string; close: () => void; remove: () => Promise<void> }) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    dialog.current?.showModal();
  }, []);
  return (
    <dialog class="photo-view" ref={dialog} aria-label={props.alt} onClose={props.close}>
      <PhotoImage hash={props.hash} alt={props.alt} class="photo-full" />
      <div class="button-row">
        <button type="button" class="button button-away" onClick={() => void props.remove()}>
          {words.remove}
        </button>
        <button type="button" class="button button-main" onClick={() => dialog.current?.close()}>
          {words.close}
        </button>
      </div>
    </dialog>
  );
}
