import { useEffect, useState } from "preact/hooks";
import { type StorageState, storageState } from "../data/storage.ts";
import { onSave } from "../data/write.ts";
import type { Catalogue } from "../generated/types.ts";
import { program } from "../parts/program.ts";
import { settingsWords as words } from "../words/settings.ts";
import { bytesText } from "./bytes-text.ts";

const modes: Record<StorageState["mode"], string> = {
  opening: words.beingOpened,
  stored: words.stored,
  memory: words.memory,
  closed: words.closed,
};

const build = program() || words.devBuild;

/** Where the records are, whether they stay there, and how much room is left. */
export function StorageReport({ catalogue }: { catalogue: Catalogue | undefined }) {
  const [state, setState] = useState<StorageState | undefined>(undefined);
  useEffect(() => {
    let gone = false;
    const look = () => void storageState().then((s) => !gone && setState(s));
    look();
    const stop = onSave(look);
    return () => {
      gone = true;
      stop();
    };
  }, []);
  return (
    <section class="block" aria-label={words.storage}>
      <h2 class="block-title">{words.storage}</h2>
      {state?.problem && <p class="field-problem">{state.problem}</p>}
      {state?.nearlyFull && <p class="field-problem">{words.nearlyFull}</p>}
      <dl class="pairs figures">
        {state && (
          <>
            <dt>{words.mode}</dt>
            <dd>{modes[state.mode]}</dd>
            <dt>{words.persisted}</dt>
            <dd>{persistedText(state.persisted)}</dd>
          </>
        )}
        {state?.usage !== undefined && (
          <>
            <dt>{words.used}</dt>
            <dd>
              {state.quota === undefined
                ? bytesText(state.usage)
                : words.usedOf(bytesText(state.usage), bytesText(state.quota))}
            </dd>
          </>
        )}
        <dt>{words.version}</dt>
        <dd class="stamped">{build}</dd>
        {catalogue && (
          <>
            <dt>{words.rubrics}</dt>
            <dd>{catalogue.rubrics.map((r) => `${r.kind} ${r.version}`).join(", ")}</dd>
          </>
        )}
      </dl>
    </section>
  );
}

function persistedText(persisted: boolean | undefined): string {
  if (persisted === undefined) return words.persistedUnknown;
  return persisted ? words.persistedYes : words.persistedNo;
}
