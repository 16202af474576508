import type {
  fieldWords,
  moneyWords,
  oddsWords,
  pageWords,
  rangeWords,
  resultWords,
  stepperWords,
  whyWords,
} from "../parts.ts";

export const money: typeof moneyWords = {
  empty: "Sin cantidad: escríbala como 2400 o 2400.50.",
  negative: (given) => `«${given}» es menos que cero: escriba una cantidad de 0 o más.`,
  unreadable: (given) => `«${given}» no es una cantidad: escríbala como 2400 o 2400.50.`,
  tooLarge: (given) => `«${given}» es demasiado: como mucho 1000000000.`,
  letters: (given) => `«${given}» lleva letras: escriba la cantidad en cifras, como 2400.`,
  foreign: (given, currency) => `«${given}» no está en ${currency}: conviértala y escriba la cantidad sola.`,
};

export const range: typeof rangeWords = {
  low: "Al menos",
  likely: "Lo más probable",
  high: "Como mucho",
  order:
    "Las tres cantidades deben ir en aumento: al menos, lo más probable, como mucho. No se guarda nada hasta que así sea.",
  incomplete: "Llene las tres cantidades: al menos, lo más probable, como mucho.",
};

/** Cuánto del recorrido está hecho. */
export const checked = (done: number, all: number, skipped: number): string =>
  skipped === 0 ? `${done} de ${all} revisados` : `${done} de ${all} revisados, ${skipped} no`;

export const page: typeof pageWords = {
  back: "Atrás",
  loading: "Leyendo este teléfono…",
  noListingTitle: "No está en este teléfono",
  noListing: "No hay tal anuncio en este teléfono. Quizá se borró, o aún no ha llegado.",
  toListings: "A los anuncios",
};

export const hazard: Record<string, string> = {
  danger: "Peligro",
  warning: "Advertencia",
  caution: "Atención",
  notice: "Aviso",
};

export const field: typeof fieldWords = {
  optional: "opcional",
  unset: "sin indicar",
  notNumber: (given) => `«${given}» no es un número: escríbalo como 12 o 12.5.`,
  notWhole: (given) => `«${given}» no es un número entero: escríbalo como 12.`,
  twoWays: (given, whole, decimal) =>
    `«${given}» se puede leer de dos maneras: escriba ${whole} o ${decimal}.`,
  otherUnit: (given, units) =>
    `«${given}» lleva una unidad que aquí no se usa: escriba el número solo, o con ${units.join(" o ")}.`,
  notYear: (given) => `«${given}» no es un año: escriba cuatro cifras, como 2014.`,
  shortYear: (given, year) => `«${given}» podría ser de cualquier siglo: escriba ${year}.`,
  futureYear: (given, most) => `${given} está en el futuro: escriba un año hasta ${most}.`,
  tooLow: (given, low) => `«${given}» es muy poco: al menos ${low}.`,
  tooHigh: (given, high) => `«${given}» es demasiado: como mucho ${high}.`,
  tooLong: (have, most) => `${have} caracteres son demasiados: como mucho ${most}.`,
  required: "Esto no puede quedar vacío.",
  unit: (label) => `Unidad de ${label}`,
};

export const result: typeof resultWords = {
  noRubric: "Diga primero qué clase de equipo es.",
  noCatalogue: "El motor de cálculo no arrancó, así que no se calcula nada. Lo que anote se guarda.",
};

export const why: typeof whyWords = {
  ask: (figure) => (figure === "" ? "¿Por qué?" : `¿Por qué ${figure}?`),
  told: (title, figure) => (figure === "" ? title : `${title}: ${figure}`),
};

export const odds: typeof oddsWords = { fewest: "menos de 1" };

export const stepper: typeof stepperWords = {
  less: (label) => `Menos: ${label}`,
  more: (label) => `Más: ${label}`,
};
