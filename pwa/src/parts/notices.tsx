import { takeUpdate, updateState } from "../sw/update.ts";
import { storeWords, updateWords } from "../words/frame.ts";
import { Banner } from "./page.tsx";
import { catalogueProblem } from "./use-catalogue.ts";
import { useDataState } from "./use-live.ts";

/** What the app must say of itself before any screen speaks. */
export function Notices() {
  return (
    <div class="banners">
      <StoreNotice />
      <EngineNotice />
      <UpdateNotice />
    </div>
  );
}

const reload = () => location.reload();

function StoreNotice() {
  const { mode, problem } = useDataState();
  if (mode === "memory") {
    return (
      <Banner tone="problem" urgent>
        <p>
          {storeWords.memory} {problem?.message ?? storeWords.noStore}
        </p>
      </Banner>
    );
  }
  if (mode === "closed") {
    return (
      <Banner tone="problem" urgent>
        <p>{storeWords.closed(problem?.message ?? storeWords.closedWhy)}</p>
        <button type="button" class="button" onClick={reload}>
          {storeWords.reload}
        </button>
      </Banner>
    );
  }
  // Opening with a problem is waiting for another tab to let go.
  return problem ? (
    <Banner tone="problem">
      <p>{problem.message}</p>
    </Banner>
  ) : null;
}

function EngineNotice() {
  const problem = catalogueProblem.value;
  return problem === undefined ? null : (
    <Banner tone="problem" urgent>
      <p>{problem}</p>
    </Banner>
  );
}

function UpdateNotice() {
  const state = updateState.value;
  if (state === "ready") {
    return (
      <Banner tone="note">
        <p>{updateWords.ready}</p>
        <button type="button" class="button button-main" onClick={() => void takeUpdate()}>
          {updateWords.start}
        </button>
      </Banner>
    );
  }
  if (state === "elsewhere") {
    return (
      <Banner tone="note">
        <p>{updateWords.elsewhere}</p>
        <button type="button" class="button" onClick={reload}>
          {updateWords.reload}
        </button>
      </Banner>
    );
  }
  return state === "refused" ? (
    <Banner tone="note">
      <p>{updateWords.noWorker}</p>
    </Banner>
  ) : null;
}
