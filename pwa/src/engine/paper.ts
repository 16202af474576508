/** The typed door to the module that draws documents as PDF; it is loaded at the first question. */
import type { Document, PDFRequest, UncoveredRequest } from "../generated/types.ts";
import { paperMakerWords } from "../words/engine.ts";
import { WorkerDoor } from "./worker-door.ts";

const door = new WorkerDoor(
  () => new Worker(new URL("./paper-worker.ts", import.meta.url), { type: "module" }),
  paperMakerWords,
);

/**
 * The document as a PDF. Photos are JPEG copies by key; their buffers are handed over
 * and are empty afterwards. A photo that is not among them is drawn as one that is not there.
 */
export async function renderPdf(
  doc: Document,
  page: "a4" | "letter",
  photos: ReadonlyMap<string, ArrayBuffer>,
): Promise<Blob> {
  const request: PDFRequest = { document: doc, page, keys: [...photos.keys()] };
  const list = [...photos.values()];
  const file = await door.ask<ArrayBuffer>("pdf", { request, photos: list }, list);
  return new Blob([file], { type: "application/pdf" });
}

/** The characters that a PDF of the document shows as an empty box. */
export function uncovered(doc: Document): Promise<string[]> {
  const request: UncoveredRequest = { document: doc };
  return door.ask("uncovered", { request, photos: [] });
}
