import type { benchWords, limitWords } from "../bench.ts";

export const bench: typeof benchWords = {
  title: "Calculadora de taller",
  about:
    "Cada límite medido por sí solo, sin anuncio. Lo que anote aquí no se guarda; queda hasta que se cierre la aplicación.",
  search: "Buscar un límite",
  none: (text) => `Ningún límite coincide con «${text}». Pruebe una palabra como cable, prensa o rosca.`,
  count: (n) => String(n),
  entered: "con datos anotados",
  entry: "Escriba 3/8, 1 1/2, 9.5 mm, 0,35 o 3 000 psi: vale la unidad que usted escriba.",
  enter: "Lo que se sabe",
  more: "Puede quedar vacío",
  readFirst: "Lea esto primero",
  clear: "Borrar estos datos",
  unknown: "No existe ese límite. Quizá sea de otra versión.",
  notTaken: (field, why) => `No se pudo tomar ${field}: ${why}`,
  backToCheck: "Volver al punto",
  open: "Abrir en la calculadora de taller",
};

export const limit: typeof limitWords = {
  maker: "El valor del propio fabricante",
  makerHint: "Del manual o de la placa. El valor del fabricante manda sobre el que se tiene aquí.",
  makerField: "Valor del fabricante",
  optional: "puede quedar vacío",
  assumed: (text) => `si queda vacío se toma ${text}`,
  either: (others) => `este, o ${others.join(", ")}`,
  choose: "elija",
  none: "sin indicar",
  notEntered: "Anote lo que se pide arriba y aquí se calcula el límite.",
  unread: "Uno de los datos de arriba no se puede leer así, por eso aún no se calcula nada.",
  result: "Lo que resulta",
  value: "Valor",
  scale: (value, most) => `Valor ${value}, límite ${most}`,
  valueIs: (value) => `valor ${value}`,
  limitIs: (most) => `límite ${most}`,
  further: "Sus cifras",
  source: "Fuente",
  how: "Fórmula",
  price: (low, per) => `${low} por ${per}`,
  ownPrice: "precio propio",
  examplePrice: (dated) => (dated ? `ejemplo del ${dated}` : "ejemplo"),
};

export const standing: Record<string, string> = {
  published: "Leído en la fuente o en una copia pública de ella.",
  "seen in reprint": "Leído en una reimpresión de una norma de pago, no en la norma misma.",
  "common practice": "Costumbre del oficio sin norma detrás: puede advertir, y no aprueba nada.",
  "from memory": "Recordado, no consultado: puede advertir, y no aprueba nada.",
  "maker's own figure": "Tal como usted lo anotó del manual o de la placa.",
  definition: "Aritmética o geometría: no hay nada que consultar.",
};

export const group: Record<string, string> = {
  nearest: "Roscas normalizadas más cercanas",
  mistaken: "Se confunde fácilmente con",
  "forced-in": "Probablemente entró a la fuerza",
  "forced-into": "Probablemente se forzó en",
  repair: "Reparaciones",
};
