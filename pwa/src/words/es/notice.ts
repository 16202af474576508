import type { noticeWords } from "../notice.ts";

export const notice: typeof noticeWords = {
  title: "El texto del anuncio",
  field: "Pegue el texto del anuncio",
  hint: "Tal como está publicado, en inglés. Se lee en este teléfono buscando precio, tamaño, año, alimentación y lugar; nada se llena antes de que usted lo toque.",
  aside: (n) => (n === 0 ? "" : n === 1 ? "1 por confirmar" : `${n} por confirmar`),
  reading: "Leyendo el texto…",
  nothing: "No se reconoció nada en él. Se guarda de todos modos.",
  allStand: "Todo lo reconocido ya está en el anuncio.",
  found: "Reconocido en él",
  foundHint: "Tome lo que sea correcto. Cada dato lleva las palabras de donde salió.",
  useAll: (n) => (n === 1 ? "Tomar el que aún está vacío" : `Tomar los ${n} que aún están vacíos`),
  use: "Tomarlo",
  useWhat: (title, value) => `${title} ${value}`,
  stands: "así está",
  now: (value) => `Ahora: ${value}`,
  sure: { plain: "lo dice", likely: "probable", doubtful: "dudoso" },
  foreign: (currency, ours) => `En ${currency}, y usted cuenta en ${ours}: conviértalo y anótelo usted.`,
  refused: (title, why) => `No se tomó ${title}: ${why}`,
  tooLong: (have, most) => `${have} caracteres son demasiados: como mucho ${most}. Acorte el texto.`,
  label: (title) => `${title}, del texto del anuncio`,
  allLabel: "Tomado del texto del anuncio",
  seen: "Dónde se vio",

  pasteTitle: "De un anuncio",
  kinds: "El texto habla de",
  otherKinds: "Otras clases",
  more: (n) =>
    n === 1
      ? "Se reconoció 1 dato más: lo confirma a continuación."
      : `Se reconocieron ${n} datos más: los confirma a continuación.`,
};
