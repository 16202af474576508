/** The language the engine answers in, and the catalogue that speaks it. */

import spanish from "../generated/catalogue.es.json?url";
import english from "../generated/catalogue.json?url";

const catalogues = { en: english, es: spanish };

let spoken = "en-US";

/** BCP 47; set once, before anything is asked. */
export const setLocale = (id: string): void => {
  spoken = id;
};

export const localeSpoken = (): string => spoken;

export const languageOf = (locale: string): keyof typeof catalogues => (/^es\b/i.test(locale) ? "es" : "en");

export const catalogueUrlOf = (locale: string): string => catalogues[languageOf(locale)];
