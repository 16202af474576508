import { useEffect, useState } from "preact/hooks";
import { loadAppraisalFile } from "../data/file.ts";
import { listingDoc } from "../data/id.ts";
import { planVisit } from "../engine/engine.ts";
import type { VisitPlan } from "../generated/types.ts";
import { resultWords as words } from "../words/parts.ts";
import { catalogueProblem, useCatalogue } from "./use-catalogue.ts";
import { useWatch } from "./use-watch.ts";

/** The plan of a visit to a listing, again after every change to it; while a newer one is made the last stays. */
export function useVisit(id: string): { plan?: VisitPlan; problem?: string } {
  const catalogue = useCatalogue();
  const ready = catalogue ? "ready" : "waiting";
  const loaded = useWatch(`visit/${id}/${ready}`, async () =>
    catalogue ? await loadAppraisalFile(listingDoc(id), catalogue.carried) : undefined,
  );
  const [state, setState] = useState<{ plan?: VisitPlan; problem?: string }>({});
  const file = loaded.value?.file;
  useEffect(() => {
    if (!file) return;
    if (file.rubric.id === "") {
      setState({ problem: words.noRubric });
      return;
    }
    let late = false;
    planVisit(file).then(
      (plan) => !late && setState({ plan }),
      (cause: unknown) =>
        !late &&
        setState((before) => ({
          ...before,
          problem: cause instanceof Error ? cause.message : String(cause),
        })),
    );
    return () => {
      late = true;
    };
  }, [file]);
  const problem =
    loaded.problem ?? state.problem ?? (catalogue ? undefined : catalogueProblem.value && words.noCatalogue);
  return { ...(state.plan ? { plan: state.plan } : {}), ...(problem ? { problem } : {}) };
}
