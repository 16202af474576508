/** Light, dark or as the device says: a setting of this device alone. */
export type Theme = "auto" | "light" | "dark";

const key = "asfound-theme";

export function theme(): Theme {
  try {
    const kept = localStorage.getItem(key);
    return kept === "light" || kept === "dark" ? kept : "auto";
  } catch {
    return "auto";
  }
}

/** Puts the theme on the page. */
export function wearTheme(chosen: Theme = theme()): void {
  const root = document.documentElement;
  if (chosen === "auto") delete root.dataset.theme;
  else root.dataset.theme = chosen;
  const colour = getComputedStyle(root).getPropertyValue("--paper").trim();
  for (const meta of document.querySelectorAll<HTMLMetaElement>('meta[name="theme-color"]')) {
    if (chosen !== "auto" && colour) meta.content = colour;
  }
}

export function chooseTheme(chosen: Theme): void {
  try {
    localStorage.setItem(key, chosen);
  } catch {
    // Without storage the choice holds until the page closes.
  }
  wearTheme(chosen);
}
