import type { archiveWords } from "../archive.ts";

export const archive: typeof archiveWords = {
  tooManyPhotos: (mostGB) =>
    `Hay más de ${mostGB} GB de fotos: demasiado para un solo archivo de respaldo. Deje que las tenga el servidor.`,
  notMade: "No se pudo hacer el archivo de respaldo. Intente otra vez.",
  newer: (version, most) =>
    `Este archivo de respaldo lo escribió una aplicación más nueva (versión de archivo ${version}, esta aplicación lee hasta la ${most}). Nada cambió. Actualice la aplicación y léalo otra vez.`,
  readFirst: "Primero lea el archivo de respaldo, después confirme.",
  broken: (why) =>
    `Este archivo de respaldo no se puede leer (${why}). Nada cambió. Elija un archivo de respaldo completo, o guárdelo otra vez en el otro equipo.`,
  empty: "está vacío",
  contents: "su índice está dañado",
  noEnd: "falta su final, o no es un archivo zip",
  damaged: (name) => `«${name}» está dañado`,
  noRecords: (name) => `no contiene ${name}; no es una copia de esta aplicación`,
  tooLarge: (name) => `${name} es demasiado grande`,
  noJson: (name) => `${name} no es un texto JSON completo`,
  noBackup: "no es una copia de esta aplicación",
  noVersion: "falta su versión",
  noRows: (name) => `${name} no tiene lista de filas`,
  future: "está en el futuro: el reloj de aquel equipo, o el de este, está mal",
  row: (n) => `fila ${n}`,
  photos: "fotos",
  photoEntry: "una entrada de la lista de fotos está mal formada",
  noPhoto: "el archivo falta en la copia",
  largePhoto: (mostMB) => `la foto pesa más de ${mostMB} MB`,
  otherPhoto: "la foto no es la que dice su nombre",
};
