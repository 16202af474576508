import { render } from "preact";
import { current, openData } from "./data/db.ts";
import { redoUnsaved } from "./data/journal.ts";
import { keepStorage } from "./data/storage.ts";
import { edit } from "./data/write.ts";
import { setLocale } from "./engine/engine.ts";
import { warmCatalogue } from "./parts/use-catalogue.ts";
import "./style/tokens.css";
import "./style/letters.css";
import "./style/base.css";
import "./style/frame.css";
import "./style/parts.css";
import "./style/fields.css";
import "./style/listings.css";
import "./style/photo.css";
import "./style/walkaround.css";
import { wearTheme } from "./style/theme.ts";
import { keepApp } from "./sw/update.ts";
import { startSync } from "./sync/sync.ts";
import { locale, speak } from "./words/tongue.ts";

// Better in English than not at all.
const spoken = speak().catch(() => undefined);

const root = document.getElementById("app");
if (root) {
  wearTheme();
  // The screens are read once the words are in the reader's language.
  void spoken
    .then(() => import("./app.tsx"))
    .then(({ App }) => {
      root.replaceChildren();
      render(<App />, root);
    });
}

setLocale(locale());
void warmCatalogue();
// What goes wrong in opening is said in words, too.
void spoken
  .then(() => openData())
  .then((state) => {
    if (state.mode === "stored")
      void redoUnsaved(current(), ({ label, changes, options }) => edit(label, changes, options));
    // A store held open by another tab ends here later; the app shows it and goes on.
    if (state.mode !== "closed") {
      keepStorage();
      startSync();
    }
  });
keepApp();
