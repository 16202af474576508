import type { fitWords } from "../fit.ts";

export const fit: typeof fitWords = {
  title: "¿Cabe en mi taller?",
  step: "Si cabe en su taller",
  back: "El anuncio",
  toShop: "Su taller",
  toEstimate: "Costos",
  none: "La pauta de esta clase aún no indica su tamaño, así que no hay nada que comparar con su taller.",
  points: "Punto por punto",
  cautions: "Primero",
  missing: "Esto lo resolvería",
  landing: "Costo que trae",
  figure: "Cifra y fuente",
  findings: {
    fits: "cabe",
    "with-work": "con trabajo",
    "does-not": "no cabe",
    "not-known": "no se sabe",
  },
};
