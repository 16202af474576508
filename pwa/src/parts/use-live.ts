import { useEffect, useState } from "preact/hooks";
import { type DataState, dataState, onDataState } from "../data/db.ts";
import { onSyncStatus, type SyncStatus, syncStatus } from "../sync/sync.ts";

/** How the store is doing, live. */
export function useDataState(): DataState {
  const [state, setState] = useState<DataState>(dataState);
  useEffect(() => {
    setState(dataState());
    return onDataState(setState);
  }, []);
  return state;
}

/** What is on the server and what is not, live. */
export function useSyncStatus(): SyncStatus {
  const [status, setStatus] = useState<SyncStatus>(syncStatus);
  useEffect(() => onSyncStatus(setStatus), []);
  return status;
}
