import type { editorWords, engineWords, paperMakerWords } from "../engine.ts";

export const engine: typeof engineWords = {
  stopped:
    "El motor de cálculo se detuvo. Sus hallazgos se conservan; los puntajes y los precios no se calculan hasta que vuelva a cargar la página.",
  notLoaded: (cause) =>
    `No se pudo cargar el motor de cálculo, así que los puntajes y los precios no se calculan hasta que vuelva a cargar la página. Lo que anote se conserva. (${cause})`,
  notStarted: (cause) => `El motor de cálculo no pudo arrancar: ${cause}`,
  fileGone: "No se pudo leer el archivo: se movió o cambió. Elíjalo otra vez.",
  noChecks: (cause) => `No se pudo cargar la lista de puntos (${cause}): vuelva a cargar la página.`,
};

export const editor: typeof editorWords = {
  stopped: "El editor de pautas se detuvo. Lo que anotó se conserva; siga, y arranca otra vez.",
  notLoaded: (cause) =>
    `No se pudo cargar el editor de pautas. Lo que anotó se conserva: vuelva a cargar la página. (${cause})`,
  notStarted: (cause) => `El editor de pautas no pudo arrancar: ${cause}`,
};

export const paperMaker: typeof paperMakerWords = {
  stopped: "La parte que hace los documentos se detuvo. Lo que anotó se conserva; siga, y arranca otra vez.",
  notLoaded: (cause) =>
    `No se pudo cargar la parte que hace los documentos. Lo que anotó se conserva: vuelva a cargar la página. (${cause})`,
  notStarted: (cause) => `La parte que hace los documentos no pudo arrancar: ${cause}`,
};
