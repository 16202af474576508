import { useEffect, useState } from "preact/hooks";
import { watch } from "../data/read.ts";

/** What a live question to the store gave so far. */
export interface Watched<T> {
  value?: T;
  problem?: string;
}

/** The answer of the query, again after every change it depends on; `key` names the question. */
export function useWatch<T>(key: string, query: () => Promise<T>): Watched<T> {
  const [state, setState] = useState<{ key: string; watched: Watched<T> }>({ key, watched: {} });
  useEffect(() => {
    setState({ key, watched: {} });
    return watch(
      query,
      (value) => setState({ key, watched: { value } }),
      (error) => setState((before) => ({ key, watched: { ...before.watched, problem: error.message } })),
    );
  }, [key]);
  // An answer to the question before must not show under the new one.
  return state.key === key ? state.watched : {};
}
