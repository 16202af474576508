import type { uniteWords } from "../unite.ts";

export const unite: typeof uniteWords = {
  title: "Unir dos registros",
  back: "El anuncio",
  choose: "¿Qué otro registro es del mismo equipo?",
  chooseHint: "Solo se muestran registros de la misma clase.",
  none: "No hay otro registro de esta clase. Los de dos clases no se pueden unir: cambie antes la clase de uno.",
  kinds: (mine, theirs) =>
    `Uno es «${mine}» y el otro «${theirs}»: solo se unen registros de una misma clase. Cambie antes la clase de uno.`,
  gone: "El otro registro ya no está en este teléfono. Elija de nuevo.",
  kept: "Sigue",
  away: "Se guarda aparte",
  other: "Elegir otro",
  taken: "Se toma tal como está",
  takenNothing: "Nada: este registro ya tiene lo que dice el otro, o se decide abajo.",
  fields: (n) => (n === 1 ? "1 campo" : `${n} campos`),
  checks: (n) => (n === 1 ? "1 punto" : `${n} puntos`),
  photos: (n) => (n === 1 ? "1 foto" : `${n} fotos`),
  notes:
    "Las observaciones del mismo punto quedan una tras otra. Los comparables son de la clase, así que ambos ya los tienen.",
  links: (n) =>
    n === 1
      ? "1 enlace dado a un vendedor queda con el registro que se guarda aparte."
      : `${n} enlaces dados a vendedores quedan con el registro que se guarda aparte.`,
  differ: (n) => (n === 1 ? "1 cosa difiere" : `${n} cosas difieren`),
  differNot: "Nada difiere.",
  lead: "De dos notas se elige la más baja; de lo demás, lo último que se anotó. Cambie lo que no sea correcto.",
  mine: "Este registro",
  theirs: "El otro",
  both: "Ambas, una tras otra",
  kindVersion: (kind, version) => `${kind}, versión ${version}`,
  go: "Unirlos",
  label: (title) => `Unido: ${title}`,
  hint: "Un solo «Deshacer» lo revierte todo.",
};
