import type { pricesTableWords, pricesWords } from "../prices.ts";

export const prices: typeof pricesWords = {
  title: "Libro de precios",
  about: (dated) =>
    `Los precios marcados como ejemplo son cifras redondas inventadas${dated ? ` del ${dated}` : ""}. Ponga en su lugar los de su propio proveedor.`,
  region: (share) => `Los peritajes toman los ejemplos por el ${share} de su región.`,
  example: "ejemplo",
  own: "propio",
  per: (unit) => `por ${unit}`,
  exampleOf: (range, dated) => `Ejemplo${dated ? ` del ${dated}` : ""}: ${range}`,
  ownPrice: (unit) => `Precio propio por ${unit}`,
  emptyIsExample: "Si queda vacío, cuenta el precio de ejemplo.",
  setPart: "Precio propio de una pieza",
  reset: "Volver al precio de ejemplo",
  resetLabel: "Precio devuelto al ejemplo",
  search: "Buscar una pieza",
  onlyOwn: "Solo precios propios",
  ownCount: (own, all) => `${own} de ${all} con precio propio`,
  noneFound: (text) => `Ninguna pieza coincide con «${text}».`,
  noneOwn: "Aún no hay precios propios.",
  unknown: "Precios de piezas que ya no están en el libro",
  unknownHint: "Se guardan, pero ningún arreglo los usa ya.",
  newPart: "Una pieza propia",
  newPartHint: "Para pautas propias: la nombran por el identificador que se muestra al guardarla.",
  partTitle: "Qué es",
  partUnit: "Unidad en que se vende",
  partPrice: "Su precio",
  partIncomplete: "Diga qué es, en qué unidad se vende y sus tres precios.",
  addThisPart: "Agregar esta pieza",
  addPart: "Pieza propia agregada",
  partAdded: (title, id) => `«${title}» está en el libro, como ${id}.`,
  ownPart: (id) => `Una pieza propia: las pautas la nombran ${id}.`,
  removePart: "Sacar esta pieza del libro",
  loading: "Leyendo el libro de precios…",
};

export const pricesTable: typeof pricesTableWords = {
  title: "El libro de precios como tabla",
  hint: "Guárdela, cambie precios en una hoja de cálculo y vuelva a leerla. De cada precio se piden mínimo, probable y máximo; una línea vacía no cambia nada.",
  write: "Guardar como CSV",
  file: (date) => `asfound-precios-${date}.csv`,
  written: (name) => `Escrito: ${name}`,
  read: "Leer CSV",
  preview: "Lo que cambiaría",
  count: (read, total) =>
    read === total ? `${lines(total)}, todas leídas.` : `${read} de ${lines(total)} sirven.`,
  changes: (n) =>
    n === 0 ? "No cambia ningún precio." : n === 1 ? "Cambia 1 precio." : `Cambian ${n} precios.`,
  empty: (n) => `${lines(n)} sin precio.`,
  wasOwn: "propio hasta ahora:",
  wasExample: "ejemplo hasta ahora:",
  line: (n) => `línea ${n}`,
  apply: (n) => (n === 1 ? "Tomar este precio como propio" : `Tomar estos ${n} precios como propios`),
  nothing: "No hay nada que cambiar",
  leave: "Dejarlo",
  applied: (n) =>
    n === 1
      ? "1 precio ya es propio. Deshacer lo devuelve."
      : `${n} precios ya son propios. Deshacer los devuelve todos.`,
  label: (n) => (n === 1 ? "1 precio leído de una tabla" : `${n} precios leídos de una tabla`),
};

const lines = (n: number): string => (n === 1 ? "1 línea" : `${n} líneas`);
