import type { importWords } from "../import.ts";

export const imported: typeof importWords = {
  title: "Traer una tabla",
  back: "Comparables",
  about:
    "Una lista de ventas u ofertas guardada de una hoja de cálculo como CSV o texto: la primera línea nombra las columnas, cada línea siguiente es un comparable. No se guarda nada antes de que usted vea cómo se leyó.",
  kind: "Clase de equipo que contiene",
  choose: "Elegir un archivo",
  paste: "O péguela aquí",
  pasteTable: "La tabla",
  pasteHint: "Copiada de una hoja de cálculo, con la línea que nombra las columnas.",
  pasteRead: "Leer lo pegado",
  pasteEmpty: "Aún no se ha pegado nada.",
  pasted: "lo pegado",
  reading: "Leyendo la tabla…",
  from: (name) => `De ${name}`,

  read: (read, total) =>
    read === total ? `${count(read, "fila")} leídas, todas.` : `${read} de ${count(total, "fila")} leídas.`,
  leftOut: (n) =>
    n === 1
      ? "1 fila queda fuera: la razón está abajo."
      : `${n} filas quedan fuera: las razones están abajo.`,
  currency: (theirs, ours) =>
    `Los precios están en ${theirs} y usted cuenta en ${ours}. Nada se convierte: convierta antes el archivo, o déjelo.`,

  how: "Cómo se leyó",
  separators: {
    comma: "Las comas separan las celdas.",
    semicolon: "Los puntos y comas separan las celdas.",
    tab: "Los tabuladores separan las celdas.",
    "vertical bar": "Las barras verticales separan las celdas.",
    none: "Hay una sola columna: nada separa las celdas.",
  },
  decimal: "Números como 1.234 o 1,234",
  decimalPoint: "El punto empieza los decimales: 1,234.50",
  decimalComma: "La coma empieza los decimales: 1.234,50",
  days: "Fechas como 03/04/2025",
  dayFirst: "Primero el día: 3 de abril",
  monthFirst: "Primero el mes: 4 de marzo",
  basis: "Donde la tabla no lo dice, los precios fueron",
  unit: (title) => `${title} sin unidad está en`,

  columns: "Columnas",
  columnsUsed: (used, all) => `${used} de ${all} usadas`,
  columnsHint: "De dónde se lee cada dato. Elija otra columna donde no sea la correcta.",
  noColumn: "ninguna columna",
  sample: (cells) => cells.join(" · "),
  sampleNone: "vacía en todas las filas",
  unused: (names) => `No se toma: ${names.join(", ")}.`,

  preview: "Como se guardarán",
  previewMore: (n) => (n === 1 ? "Y 1 más." : `Y ${n} más.`),
  line: (n) => `línea ${n}`,

  problems: (n) => (n === 1 ? "1 observación" : `${n} observaciones`),
  problemAt: (line, column) => (column === "" ? `Línea ${line}: ` : `Línea ${line}, ${column}: `),
  more: (n) => `Mostrar ${n} más`,

  add: (n) => `Agregar ${count(n, "comparable")}`,
  adding: (done, all) => `Agregando ${done} de ${all}…`,
  there: (n) => (n === 1 ? "1 ya está." : `${n} ya están.`),
  allThere: (n) =>
    n === 1 ? "Ya está: no hay nada que agregar." : `Los ${n} ya están: no hay nada que agregar.`,
  none: "No hay nada que agregar",
  added: (n) => (n === 1 ? "1 comparable agregado." : `${n} comparables agregados.`),
  wereThere: (n) => (n === 1 ? "1 ya estaba." : `${n} ya estaban.`),
  undo: "Deshacer los quita todos.",
  failed: (n, why) =>
    n === 0
      ? why
      : `${n === 1 ? "Se agregó 1 comparable" : `Se agregaron ${n} comparables`} y se detuvo. ${why} Agregue otra vez para el resto.`,
  toComparables: "Verlos",
  label: (n) => (n === 1 ? "1 comparable traído" : `${n} comparables traídos`),
};

const count = (n: number, noun: string): string => `${n} ${noun}${n === 1 ? "" : "s"}`;
