import type { cautionWords, checkWords, walkWords } from "../walkaround.ts";
import { checked } from "./parts.ts";

export const walk: typeof walkWords = {
  title: "Recorrido",
  back: "El anuncio",
  backToList: "Todos los puntos",
  filter: "Mostrar",
  all: (n) => `Todos ${n}`,
  left: (n) => `Faltan ${n}`,
  progress: checked,
  minutesLeft: (n) => `faltan unos ${n} minutos`,
  noneLeft: "Cada punto que corresponde tiene respuesta.",
  toResult: "Resultado",
  jump: "Siguiente punto pendiente",
  open: "pendiente",
  held: "retenido",
  heldLong: "No intentarlo ahora",
  byMeasure: "por la medición",
  noRubric:
    "La clase de equipo no está indicada o esta versión no la conoce, así que aún no hay nada que revisar.",
  setKind: "Elegir la clase",
  unknownCheck: "Esta clase de equipo no tiene ese punto. Quizá sea de otra versión.",
  notApplying:
    "Por lo que se indicó de este equipo, este punto no corresponde. Una respuesta dada aquí se guarda pero no cuenta.",
  engine: "El motor de cálculo no respondió; por eso se muestran también puntos que no corresponden.",
};

export const state: Record<string, string> = {
  documents: "Papeles y placas: no toque nada todavía",
  "power-off": "Sin corriente y asegurado contra el arranque",
  unloaded: "En marcha, sin carga",
  loaded: "Con carga, lo último de todo",
};

export const caution: typeof cautionWords = {
  title: "Antes de recorrerlo",
  lead: "Lea esto una vez ante esta máquina. Los puntos se abren después.",
  manual:
    "El manual del fabricante va primero. Decide la norma local. Si no tiene la certeza de que un paso se puede hacer sin peligro para nadie, déjelo y márquelo como no revisado.",
  read: "Lo he leído",
  again: "Precauciones para esta clase",
};

export const check: typeof checkWords = {
  onlyIf: (ask, options) => `Este punto es solo para: ${options.join(" o ")}. Aún sin indicar: ${ask}`,
  tellIt: "Indicar cuál es",
  kinds: { look: "Mirar", measure: "Medir", run: "Hacer funcionar", read: "Leer" },
  minutes: (n) => `unos ${n} min`,
  instrument: (list) => `Necesita: ${list}`,
  nothingNeeded: "Sin instrumento",
  heldTitle: "No intentarlo ahora",
  heldDo: "Márquelo como no revisado, o anote solo lo que el vendedor mostró por sí mismo.",
  dangerFailed:
    "Falló un punto de peligro: no lo use. Apártese y avise al vendedor. Siga solo con puntos sin corriente.",
  toVerdict: "Al veredicto",
  place: (n, of) => `Punto ${n} de ${of}`,
  how: "Cómo",
  measured: "Medido",
  fixed: "Se toma como dado",
  proposes: (grade) => `Esta medición propone: ${grade}. Cuenta, salvo que usted ponga otra nota.`,
  capped: (grade) => `El valor medido pasa de su límite: no cuenta ninguna nota mejor que ${grade}.`,
  grade: "¿Qué halló?",
  gradeLabel: (title) => `Nota: ${title}`,
  measuredLabel: (title) => `Medido: ${title}`,
  noteLabel: (title) => `Observación: ${title}`,
  skip: "No revisado, porque",
  skipLabel: (title) => `No revisado: ${title}`,
  clear: "Retirar la respuesta",
  clearLabel: (title) => `Respuesta retirada: ${title}`,
  note: "Observación",
  noteHint: "Lo que debe saber el siguiente: dónde, cuánto, desde cuándo.",
  photos: "Fotos de este punto",
  previous: "Anterior",
  next: "Siguiente",
  nextOpen: "Siguiente pendiente",
  toList: "Todos los puntos",
  keys: "Teclas: 0 a 4 nota, N siguiente, P anterior, Ctrl+Z deshacer.",
  sectionCaution: "Para esta parte del recorrido",
  saved: (what) => `Guardado: ${what}`,
  skipped: (reason) => `No revisado: ${reason}`,
};
