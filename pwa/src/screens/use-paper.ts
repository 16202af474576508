import { useEffect, useRef, useState } from "preact/hooks";
import { loadAppraisalFile } from "../data/file.ts";
import { type HandOver, handOverOf, localeFor, pageOf } from "../data/hand-over.ts";
import { listingDoc } from "../data/id.ts";
import { photoHash } from "../data/photo.ts";
import { copyForDocument, notHere, type PhotoCopy } from "../data/photo-copy.ts";
import { marksPath, readMarks } from "../data/photo-marks.ts";
import { doc } from "../data/read.ts";
import type { Values } from "../data/reader.ts";
import { textOf } from "../data/shape.ts";
import { makeComparison, makeDocument } from "../engine/engine.ts";
import type {
  File as AppraisalFile,
  Document,
  DocumentAsk,
  DocumentBlock,
  PhotoMark,
} from "../generated/types.ts";
import type { ShownPhoto } from "../parts/document-view.tsx";
import { catalogueProblem, type ShopCatalogue, useCatalogue } from "../parts/use-catalogue.ts";
import { useTurn } from "../parts/use-turn.ts";
import { useWatch } from "../parts/use-watch.ts";
import { resultWords } from "../words/parts.ts";
import { locale as spoken } from "../words/tongue.ts";
import { paintFor } from "./paint-marks.ts";

export type PaperKind = "estimate" | "record" | "jobs";

export interface Paper {
  document?: Document;
  page: "letter" | "a4";
  /** Copies of its photos, by hash. */
  copies: ReadonlyMap<string, PhotoCopy>;
  /** Photos still to be copied. */
  toCopy: number;
  /** Why there is no document, or why a photo is not in it. */
  problem?: string;
}

interface Asked {
  ask: DocumentAsk;
  /** The appraisal, or all that are side by side. */
  files: AppraisalFile[];
  page: string;
  marks: ReadonlyMap<string, PhotoMark[]>;
}

/** The paper of a listing as it would go out now, with small copies of its photos; made again after every change. */
export function usePaper(id: string, kind: PaperKind): Paper {
  return usePaperOf(`${kind}/${id}`, async (catalogue) => {
    const { values } = await doc(listingDoc(id));
    const { file } = await loadAppraisalFile(id, catalogue.carried);
    const missing = await notHere(photosNamed(values));
    const choice = handOverOf(values);
    // A paper for oneself is in one's own language.
    const locale = localeNow(catalogue, kind === "estimate" ? choice.locale : "");
    const ask = askFor(kind, locale, choice, (await doc("shop")).values, file, missing);
    const page = choice.page === "" ? pageOf(locale) : choice.page;
    return { ask, files: [file], page, marks: marksOf(values) };
  });
}

/** The sheet of several listings side by side. */
export function useComparisonPaper(ids: readonly string[]): Paper {
  return usePaperOf(`comparison/${ids.join()}`, async (catalogue) => {
    const files: AppraisalFile[] = [];
    for (const id of ids) files.push((await loadAppraisalFile(id, catalogue.carried)).file);
    const locale = localeNow(catalogue, "");
    const from = filled(textOf((await doc("shop")).values.get("name")));
    const units = files[0]?.shop.units ?? catalogue.shop.units;
    const ask = { kind: "comparison", locale, units, ...(from ? { from } : {}) };
    return { ask, files, page: pageOf(locale), marks: new Map() };
  });
}

const localeNow = (catalogue: ShopCatalogue, chosen: string): string =>
  localeFor(chosen, catalogue.locales, [spoken(), ...navigator.languages])?.id ?? "";

function usePaperOf(key: string, load: (catalogue: ShopCatalogue) => Promise<Asked>): Paper {
  const catalogue = useCatalogue();
  const loaded = useWatch(`paper/${key}/${catalogue ? "ready" : ""}`, async () =>
    catalogue ? await load(catalogue) : undefined,
  );
  const steady = useSame(loaded.value);
  // Known to be missing only once a copy is tried: a picture may be there and not be the one it was.
  const [broken, setBroken] = useState<readonly string[]>([]);
  const made = useDocument(steady, broken);
  const copied = useCopies(made.document, steady?.marks, setBroken);
  const problem =
    loaded.problem ??
    (catalogue ? undefined : catalogueProblem.value && resultWords.noCatalogue) ??
    made.problem ??
    copied.problem;
  return {
    page: steady?.page === "letter" ? "letter" : "a4",
    copies: copied.copies,
    toCopy: copied.toCopy,
    ...(made.document ? { document: made.document } : {}),
    ...(problem ? { problem } : {}),
  };
}

const filled = (text: string | undefined) => (text?.trim() ? text.trim() : undefined);

function askFor(
  kind: PaperKind,
  locale: string,
  choice: HandOver,
  shop: Values,
  { shop: settings, findings }: AppraisalFile,
  missing: string[],
): DocumentAsk {
  const pairs = Object.entries(findings ?? {}).flatMap(([check, finding]) =>
    (finding.pairs ?? []).map(({ before, after }) => ({ check, before, after })),
  );
  const from = filled(textOf(shop.get("name")));
  const contact = filled(textOf(shop.get("contact")));
  const own = { kind, locale, units: settings.units, missing, pairs };
  if (kind !== "estimate") return { ...own, ...(from ? { from } : {}) };
  const to = filled(choice.seller);
  const word = filled(choice.word);
  return {
    ...own,
    units: choice.units === "" ? settings.units : choice.units,
    ...(from ? { from } : {}),
    ...(contact ? { contact } : {}),
    ...(to ? { to } : {}),
    ...(word ? { word } : {}),
    ...(choice.price === undefined ? {} : { price: choice.price }),
    leave_lines: choice.left.line,
    leave_checks: choice.left.check,
    leave_photos: choice.left.photo,
    notes: choice.notes,
  };
}

function photosNamed(values: Values): string[] {
  const hashes = [...values.keys()].map(photoHash).filter((hash) => hash !== undefined);
  return [...new Set(hashes)];
}

/** What is drawn over each photo, wherever it hangs. */
function marksOf(values: Values): Map<string, PhotoMark[]> {
  const out = new Map<string, PhotoMark[]>();
  for (const path of values.keys()) {
    const hash = photoHash(path);
    if (hash === undefined) continue;
    const marks = readMarks(values.get(marksPath(path)))?.marks ?? [];
    if (marks.length > 0) out.set(hash, marks);
  }
  return out;
}

/** The value before where the new one says the same, so that opening a link does not make all anew. */
function useSame(value: Asked | undefined): Asked | undefined {
  const kept = useRef<{ text: string; value: Asked | undefined }>({ text: "", value: undefined });
  if (value) {
    const text = JSON.stringify([value.ask, value.files, value.page, [...value.marks]]);
    if (text !== kept.current.text) kept.current = { text, value };
  }
  return kept.current.value;
}

const made = (files: AppraisalFile[], ask: DocumentAsk): Promise<Document> => {
  const [file] = files;
  return ask.kind === "comparison" || !file ? makeComparison(files, ask) : makeDocument(file, ask);
};

function useDocument(
  asked: Asked | undefined,
  broken: readonly string[],
): { document?: Document; problem?: string } {
  const turn = useTurn();
  const [state, setState] = useState<{ document?: Document; problem?: string }>({});
  useEffect(() => {
    if (!asked) return;
    let late = false;
    turn(async () => {
      if (late) return;
      try {
        const missing = [...new Set([...(asked.ask.missing ?? []), ...broken])];
        const document = await made(asked.files, { ...asked.ask, missing });
        if (!late) setState({ document });
      } catch (cause) {
        if (!late) setState({ problem: cause instanceof Error ? cause.message : String(cause) });
      }
    });
    return () => {
      late = true;
    };
  }, [asked, broken, turn]);
  return state;
}

/** The photos of a document that are on this device, in its order. */
export function photoKeys(document: Document): string[] {
  const keys = new Set<string>();
  const gather = (blocks: DocumentBlock[]) => {
    for (const block of blocks) {
      for (const photo of block.photos ?? []) if (!photo.missing) keys.add(photo.key);
      if (block.blocks) gather(block.blocks);
    }
  };
  gather(document.blocks);
  return [...keys];
}

interface Copied {
  of: Document | undefined;
  copies: ReadonlyMap<string, PhotoCopy>;
  toCopy: number;
  problem?: string;
}

/** Photos copied at once: a browser decodes and encodes beside the page. */
const AT_ONCE = 3;

const none: ReadonlyMap<string, PhotoCopy> = new Map();

function useCopies(
  document: Document | undefined,
  marks: ReadonlyMap<string, PhotoMark[]> | undefined,
  setBroken: (keys: readonly string[]) => void,
): Copied {
  const [copied, setCopied] = useState<Copied>({ of: undefined, copies: none, toCopy: 0 });
  useEffect(() => {
    if (!document) return;
    let late = false;
    const keys = photoKeys(document);
    const copies = new Map<string, PhotoCopy>();
    const tell = (left: number, problem?: string) =>
      !late &&
      setCopied({ of: document, copies: new Map(copies), toCopy: left, ...(problem ? { problem } : {}) });
    const copyAll = async () => {
      let problem: string | undefined;
      const broken: string[] = [];
      let done = 0;
      const waiting = [...keys];
      const work = async () => {
        for (let key = waiting.shift(); key !== undefined && !late; key = waiting.shift()) {
          try {
            const copy = await copyForDocument(
              key,
              keys.length,
              paintFor(marks?.get(key), document.language),
            );
            if (copy) copies.set(key, copy);
            else broken.push(key);
          } catch (cause) {
            broken.push(key);
            problem = cause instanceof Error ? cause.message : String(cause);
          }
          // Telling of each would draw the whole paper anew each time.
          if (++done % 16 === 0 && done < keys.length) tell(keys.length - done, problem);
        }
      };
      await Promise.all(Array.from({ length: AT_ONCE }, work));
      if (late) return;
      tell(0, problem);
      if (broken.length > 0 && !late) setBroken(broken);
    };
    tell(keys.length);
    void copyAll();
    return () => {
      late = true;
    };
  }, [document, marks]);
  if (document && copied.of !== document) {
    // The copies of the paper before are shown until the new ones are there.
    return { of: document, copies: copied.copies, toCopy: photoKeys(document).length };
  }
  return copied;
}

/** Addresses of the copies, for as long as the screen shows them. */
export function useShown(copies: ReadonlyMap<string, PhotoCopy>): (key: string) => ShownPhoto | undefined {
  const shown = useRef(new Map<PhotoCopy, ShownPhoto>());
  useEffect(() => {
    const kept = shown.current;
    return () => {
      for (const { url } of kept.values()) URL.revokeObjectURL(url);
      kept.clear();
    };
  }, []);
  return (key) => {
    const copy = copies.get(key);
    if (!copy) return undefined;
    let found = shown.current.get(copy);
    if (!found) {
      const url = URL.createObjectURL(new Blob([copy.data], { type: "image/jpeg" }));
      found = { url, width: copy.width, height: copy.height };
      shown.current.set(copy, found);
    }
    return found;
  };
}
