/** The app on this device: kept for work without signal, and replaced only when the user says so. */

import { registerSW } from "virtual:pwa-register";
import { signal } from "@preact/signals";

export type UpdateState = "none" | "ready" | "elsewhere" | "refused";
export const updateState = signal<UpdateState>("none");

/** Between looks for a new version while the app stays open, ms. */
const every = 60 * 60 * 1000;

let replace: ((reload?: boolean) => Promise<void>) | undefined;
let tapped = false;

export function keepApp(): void {
  if (!("serviceWorker" in navigator) || import.meta.env.DEV) return;
  replace = registerSW({
    immediate: true,
    onNeedRefresh: () => {
      updateState.value = "ready";
    },
    // Another tab may have taken the new version; this page never reloads by itself.
    onNeedReload: () => {
      if (tapped) location.reload();
      else updateState.value = "elsewhere";
    },
    onRegisteredSW: (_url, registration) => {
      if (!registration) return;
      const look = () => {
        if (navigator.onLine) registration.update().catch(() => undefined);
      };
      setInterval(look, every);
    },
    onRegisterError: () => {
      updateState.value = "refused";
    },
  });
}

/** Starts the waiting version and reloads into it. */
export async function takeUpdate(): Promise<void> {
  tapped = true;
  // Leaving a field keeps what was typed in it.
  if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
  await replace?.(true);
}
