/** Days and times of day as they are written where the reader is. */
import { locale as spoken } from "../words/tongue.ts";

/** A moment (ISO 8601, or ms since epoch), to the minute; what is none is left as it is. */
export function moment(at: string | number, locale: string = spoken()): string {
  const when = new Date(at);
  return Number.isNaN(when.getTime())
    ? String(at)
    : when.toLocaleString(locale, { dateStyle: "medium", timeStyle: "short" });
}

/** A day, YYYY-MM-DD, in words; what is none stays as it is. */
export function day(date: string, locale: string = spoken()): string {
  const at = new Date(`${date}T12:00:00`);
  return Number.isNaN(at.getTime()) ? date : at.toLocaleDateString(locale, { dateStyle: "long" });
}
