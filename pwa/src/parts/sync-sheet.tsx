import { useState } from "preact/hooks";
import { parked } from "../data/read.ts";
import { type SyncStatus, syncNow } from "../sync/sync.ts";
import { syncWords as words } from "../words/frame.ts";
import { locale as spoken } from "../words/tongue.ts";
import { useWatch } from "./use-watch.ts";

/** The words of the badge, at most two lines. */
export function syncTitle(status: SyncStatus, memory: boolean): string {
  if (memory) return words.memory;
  const waiting = status.pending + status.photosPending;
  const phase =
    status.phase === "on-server"
      ? words.onServer
      : status.phase === "waiting"
        ? words.waiting(waiting)
        : words.savedHere;
  return status.parked > 0 ? `${phase} · ${words.refusedShort(status.parked)}` : phase;
}

function phaseSentence(status: SyncStatus): string {
  if (status.phase === "on-server") return words.onServerLong;
  if (status.phase === "waiting") return words.waitingLong(status.pending, status.photosPending);
  return words.savedHereLong;
}

/** What is saved where, and what the server would not take. */
export function SyncSheet({ status, close }: { status: SyncStatus; close: () => void }) {
  const refused = useWatch("parked", parked).value ?? [];
  const [asking, setAsking] = useState(false);
  const [answer, setAnswer] = useState<string | undefined>(undefined);
  const check = async () => {
    setAsking(true);
    setAnswer(undefined);
    const before = status.lastContact;
    try {
      const after = await syncNow();
      const unreached = after.problem === undefined && after.lastContact === before;
      setAnswer(unreached ? words.noConnection : undefined);
    } finally {
      setAsking(false);
    }
  };
  const busy = asking || status.busy;
  return (
    <section class="sheet" aria-label={words.detail} id="sync-sheet">
      <h2>{words.detail}</h2>
      <p>{phaseSentence(status)}</p>
      {status.problem && <p class="field-problem">{status.problem}</p>}
      <p class={answer ? "sheet-answer" : "seen-by-reader"} role="status">
        {answer}
      </p>
      {status.notice && <p>{status.notice}</p>}
      <p class="quiet">
        {status.lastContact === undefined
          ? words.never
          : words.last(
              new Date(status.lastContact).toLocaleString(spoken(), {
                dateStyle: "medium",
                timeStyle: "short",
              }),
            )}
      </p>
      {refused.length > 0 && (
        <div class="block">
          <h3>{words.parked(refused.length)}</h3>
          <ul class="ruled">
            {refused.map((entry) => (
              <li key={entry.key}>
                <p>{entry.reason}</p>
                <p class="quiet stamped">
                  {entry.doc} · {entry.path}
                </p>
              </li>
            ))}
          </ul>
        </div>
      )}
      <div class="button-row">
        <button type="button" class="button button-main" onClick={() => void check()} disabled={busy}>
          {busy ? words.checking : words.check}
        </button>
        <button type="button" class="button" onClick={close}>
          {words.close}
        </button>
      </div>
    </section>
  );
}
