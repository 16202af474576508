const listeners = new Set<() => void>();

/** Called after each save on this page. Returns the unsubscriber. */
export function onSave(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export function tellSaved(): void {
  for (const listener of listeners) listener();
}
