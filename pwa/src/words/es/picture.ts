import type { pictureWords } from "../picture.ts";

export const picture: typeof pictureWords = {
  unread: "No se pudo leer esta foto: elíjala otra vez, o cópiela antes a este equipo.",
  noRoom: (lacking) =>
    `No hay espacio para esta foto: libere ${lacking} MB en este equipo y agréguela otra vez. Sus respuestas se conservan.`,
  unopened: "No se pudo abrir esta foto; puede estar dañada. Tómela otra vez.",
  unshrunk: "Este navegador no pudo reducir la foto: cierre otras pestañas y agréguela otra vez.",
  copyUnopened:
    "Una foto de este documento no se puede abrir; puede estar dañada. Quítela, o tómela otra vez.",
  copyUnshrunk: "Este navegador no pudo reducir las fotos: cierre otras pestañas e intente otra vez.",
  empty: "Esta foto está vacía (0 bytes): tómela otra vez, o elija otro archivo.",
  heavy: (have, most) => `Esta foto pesa ${have} MB: ${most} MB como máximo. Elija una más pequeña.`,
  noSize: "Esta foto está dañada (sin ancho o alto): tómela otra vez.",
  sides: (width, height, most) =>
    `Esta foto tiene ${width} x ${height} píxeles: ${most} por lado como máximo. Elija una más pequeña, o recórtela.`,
  pixels: (width, height, mostMillions) =>
    `Esta foto tiene ${width} x ${height} píxeles: ${mostMillions} millones en total como máximo. Elija una más pequeña.`,
  cutOff: "Esta foto está cortada a la mitad: tómela otra vez, o vuelva a copiarla.",
  heic: "Esta foto está en formato HEIC, que pocos navegadores abren. Ponga la cámara en el formato más compatible (JPEG), o guarde la foto como JPEG y agregue esa.",
  gif: "Esta es una imagen GIF: use una foto JPEG, PNG o WebP.",
  noPhoto: "Este archivo no es una foto: use una imagen JPEG, PNG o WebP.",
  noPngHeader: "Esta foto está dañada (sin encabezado PNG): tómela otra vez.",
  noMarker: "Esta foto está dañada (falta un marcador): tómela otra vez.",
  webpPart: "Esta foto está dañada (parte WebP desconocida): tómela otra vez.",
};
