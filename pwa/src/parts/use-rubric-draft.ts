import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import { keepRubric, ownChange } from "../data/rubric.ts";
import { checkRubric } from "../engine/editor.ts";
import type { Rubric, RubricRead } from "../generated/types.ts";
import { rubricWords as words } from "../words/rubric.ts";
import { save } from "./save.ts";
import type { ShopCatalogue } from "./use-catalogue.ts";

/** Pause in editing before the whole is checked, ms. */
const pause = 300;

/** How each was found last, shown at once when another of its screens is opened. */
const lastLooked = new Map<string, RubricRead>();

const draftKey = (id: string) => `asfound-rubric-draft/${id}`;

/** What was edited and not yet saved as a version; it stays on this device. */
function storedDraft(id: string): Rubric | undefined {
  try {
    const text = localStorage.getItem(draftKey(id));
    const read: unknown = text && JSON.parse(text);
    return typeof read === "object" && read !== null && "sections" in read ? (read as Rubric) : undefined;
  } catch {
    return undefined;
  }
}

function storeDraft(id: string, rubric: Rubric | undefined): string | undefined {
  try {
    if (rubric) localStorage.setItem(draftKey(id), JSON.stringify(rubric));
    else localStorage.removeItem(draftKey(id));
    return undefined;
  } catch {
    return words.cannotKeep;
  }
}

export interface RubricDraft {
  rubric: Rubric;
  /** The version that is saved. */
  saved: Rubric;
  changed: boolean;
  /** Its problems and report; undefined while it is being checked for the first time. */
  looked: RubricRead | undefined;
  problem: string | undefined;
  set(rubric: Rubric): void;
  discard(): void;
  /** Saves it as the next version; answers why not. */
  publish(): Promise<string | undefined>;
}

/** Ids that a rubric of this id must not take. */
export const takenIds = (catalogue: ShopCatalogue, id: string | undefined): string[] =>
  catalogue.rubrics.map((r) => r.id).filter((other) => other !== id);

/** Keeps a rubric as the next version of its id, and as the shop's current one. */
export async function publishRubric(rubric: Rubric, version: number): Promise<string | undefined> {
  const { mark, changes } = await keepRubric({ ...rubric, version });
  return save(words.publishLabel(rubric.kind, version), [...changes, ownChange(rubric.id, mark)]);
}

/** An own rubric being edited: kept on this device at every change, checked a moment later. */
export function useRubricDraft(catalogue: ShopCatalogue, saved: Rubric): RubricDraft {
  const [rubric, setRubric] = useState(() => storedDraft(saved.id) ?? saved);
  const [looked, setLooked] = useState(() => lastLooked.get(saved.id));
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const latest = useRef(rubric);
  const changed = JSON.stringify({ ...rubric, version: 0 }) !== JSON.stringify({ ...saved, version: 0 });
  const set = useCallback((next: Rubric) => {
    latest.current = next;
    setRubric(next);
    setProblem(storeDraft(next.id, next));
  }, []);
  useEffect(() => {
    let late = false;
    const timer = setTimeout(() => {
      checkRubric(rubric, {
        name: rubric.kind,
        parts: catalogue.parts,
        taken: takenIds(catalogue, saved.id),
      }).then(
        (read) => {
          if (late) return;
          lastLooked.set(saved.id, read);
          setLooked(read);
        },
        (cause: unknown) => !late && setProblem(cause instanceof Error ? cause.message : String(cause)),
      );
    }, pause);
    return () => {
      late = true;
      clearTimeout(timer);
    };
  }, [rubric, catalogue, saved.id]);
  const discard = () => {
    storeDraft(saved.id, undefined);
    latest.current = saved;
    setRubric(saved);
    setProblem(undefined);
  };
  const publish = async () => {
    const why = await publishRubric(latest.current, saved.version + 1);
    if (why === undefined) storeDraft(saved.id, undefined);
    setProblem(why);
    return why;
  };
  return { rubric, saved, changed, looked, problem, set, discard, publish };
}
