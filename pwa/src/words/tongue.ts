/** The language the app speaks: a setting of this device alone. English stands in the words themselves. */
type Language = "en" | "es";

const key = "asfound-locale";

/** BCP 47: how language, numbers and dates are written. First the device's own. */
export function locale(): string {
  let kept: string | null = null;
  try {
    kept = localStorage.getItem(key);
  } catch {
    // Without storage the device decides.
  }
  return kept ?? globalThis.navigator?.language ?? "en-US";
}

const language = (of: string = locale()): Language => (/^es\b/i.test(of) ? "es" : "en");

/** Speaks another language from the next start on; false where this browser keeps no settings. */
export function chooseLocale(id: string): boolean {
  try {
    localStorage.setItem(key, id);
    return true;
  } catch {
    return false;
  }
}

/** Puts the words of the language in the place of the English ones, before any screen is loaded. */
export async function speak(): Promise<void> {
  const spoken = language();
  document.documentElement.lang = spoken;
  if (spoken === "en") return;
  const { pairs } = await import("./es/index.ts");
  for (const [english, own] of pairs) Object.assign(english, own);
}
