import type { fileWords, rightWords } from "../file.ts";

export const file: typeof fileWords = {
  leftOut: (where, path, right) => `${where}${path} se deja fuera: debería ser ${right}.`,
  book: "Libro de precios: ",
  comparables: "En los comparables: ",
  settings: "Ajustes: ",
  otherVersion: (named, used) =>
    `La versión ${named} de esta pauta no está en este equipo: se juzga con la versión ${used}.`,
};

export const right: typeof rightWords = {
  text: "un texto",
  money: "una cantidad de 0 o más, en centavos enteros",
  quantity: "un número con su unidad",
  quantityOrWord: "un número con su unidad, o una palabra",
  range: "tres cantidades en orden creciente",
  rubric: "una clase de equipo y su versión",
  date: "una fecha como 2031-05-20",
  year: "un año como 1998",
  hours: "horas, 0 o más",
  years: "años, 0 o más",
  count: "un número de piezas, 0 o más",
  whole: "un número entero de 0 o más",
  phases: "1 o 3",
  points: "una parte en puntos básicos enteros",
  rate: "una tasa en puntos básicos enteros",
  chances: "tres probabilidades en puntos básicos enteros que sumen 10000",
  odds: "tres probabilidades",
  overrun: "un promedio y una variación",
  day: "las horas de un día laboral",
  photo: "una foto",
  marks: "marcas en una foto",
  marksLeft: (most, left) =>
    `${most} marcas como máximo, una sola de escala, cada una dentro de la imagen (${left} quedan fuera)`,
  pair: "dos fotos, antes y después",
  answer: "una nota de 0 a 4, o un motivo para no revisar",
  measured: "valores medidos",
  part: "un título, una unidad y tres cantidades en orden creciente",
  landing: "desactivado, o tres cantidades en orden creciente",
  comparable: "un comparable",
  comparableWhole: "un comparable con título, precio en centavos, y pedido o vendido",
  lost: (mostPercent) => `una parte de 0 a ${mostPercent} % en puntos básicos, con un motivo`,
  output: "dos cifras mayores que 0, usada y nominal, la usada no mayor que la nominal",
  adjust: "desactivado o nada",
};
