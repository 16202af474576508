import { useState } from "preact/hooks";
import { frameWords, undoWords } from "../words/frame.ts";
import { SyncSheet, syncTitle } from "./sync-sheet.tsx";
import { useDataState, useSyncStatus } from "./use-live.ts";
import { useUndo } from "./use-undo.ts";

/** Name, undo, and what is saved where. */
export function Strip() {
  const status = useSyncStatus();
  const data = useDataState();
  const undo = useUndo();
  const [open, setOpen] = useState(false);
  const troubled = status.problem !== undefined || status.parked > 0 || data.mode === "memory";
  return (
    <>
      <header class="strip">
        <a class="strip-name" href="/">
          {frameWords.name}
        </a>
        <button
          type="button"
          class="strip-button strip-undo"
          disabled={!undo.step}
          onClick={undo.take}
          aria-label={undo.step ? undoWords.undo(undo.step.label) : undoWords.short}
        >
          <svg viewBox="0 0 24 24" aria-hidden="true" fill="none" stroke="currentColor" stroke-width="2.2">
            <path d="M9 5 4 10l5 5M4 10h9.5a6 6 0 0 1 0 12H11" transform="translate(0 -2)" />
          </svg>
          <span class="strip-two">
            <b>{undoWords.short}</b>
            <span dir="auto">{undo.step?.label}</span>
          </span>
        </button>
        <button
          type="button"
          class={troubled ? "strip-button strip-sync strip-troubled" : "strip-button strip-sync"}
          aria-expanded={open}
          aria-controls="sync-sheet"
          onClick={() => setOpen(!open)}
        >
          <SyncMark phase={status.phase} troubled={troubled} />
          <span>{syncTitle(status, data.mode === "memory")}</span>
        </button>
      </header>
      <p class={undo.said ? "undo-said" : "seen-by-reader"} role="status">
        {undo.said}
      </p>
      {open && <SyncSheet status={status} close={() => setOpen(false)} />}
    </>
  );
}

/** A phone, and beside it an empty, half or full box for the server; a triangle when something is wrong. */
function SyncMark({ phase, troubled }: { phase: string; troubled: boolean }) {
  return (
    <svg viewBox="0 0 24 24" aria-hidden="true" fill="none" stroke="currentColor" stroke-width="2">
      {troubled ? (
        <path d="M12 3 22 21H2ZM12 10v5M12 17v2" />
      ) : (
        <>
          <rect x="2" y="5" width="8" height="15" rx="1.5" fill="currentColor" />
          <rect
            x="14"
            y="5"
            width="8"
            height="15"
            rx="1.5"
            fill={phase === "on-server" ? "currentColor" : "none"}
          />
          {phase === "waiting" && <rect x="14" y="13" width="8" height="7" fill="currentColor" />}
        </>
      )}
    </svg>
  );
}
