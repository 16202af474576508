import type { rowWords, saveWords, storeFaultWords, valueWords } from "../data.ts";

export const storeFault: typeof storeFaultWords = {
  quota:
    "A este equipo ya no le queda espacio, así que no se guardó nada. Libere espacio (fotos viejas, otras aplicaciones) y guarde otra vez; lo que escribió sigue en la pantalla.",
  stuck: "Guardar tardó demasiado y se abandonó; nada cambió. Intente otra vez, o vuelva a cargar la página.",
  lost: "Se perdió la conexión con el almacenamiento de este equipo. Lo que escribió sigue en la pantalla: vuelva a cargar la página y anótelo otra vez si falta.",
  outdated:
    "Una versión más nueva de la aplicación está abierta en otra pestaña. Vuelva a cargar esta página para seguir.",
  blocked:
    "Otra pestaña tiene abierta una versión más vieja de la aplicación. Cierre las otras pestañas y vuelva a cargar esta página.",
  unavailable:
    "Este navegador no deja que la aplicación guarde nada (ventana privada o una directiva). Todo se pierde al cerrar la página: guarde antes un archivo de respaldo.",
  unknown: "Algo falló al guardar; nada cambió. Intente otra vez, o vuelva a cargar la página.",
};

export const save: typeof saveWords = {
  twice: (label) => `«${label}» no se guardó: pone dos veces el mismo campo.`,
  noDocument: (doc) => `No se guardó nada: «${doc}» no nombra ningún documento.`,
  noField: (path) => `No se guardó nada: «${path}» no nombra ningún campo.`,
  farDate: "No se guardó nada: ajuste la fecha de este equipo; es posterior al año 9999.",
  badValue: (path, why) => `«${path}» no se guardó: su valor ${why}.`,
  tooLong: (path, have, most) =>
    `«${path}» no se guardó: mide ${have} KiB; caben ${most} KiB como máximo. Acorte el texto.`,
  bringBack: "Recuperar",
  keep: "Conservar",
  settledMeanwhile: "Ese valor ya no está: el campo se resolvió mientras tanto, quizá en otro equipo.",
  noListing: "No existe ese anuncio en este equipo.",
};

export const value: typeof valueWords = {
  infinite: "no es un número finito",
  noJson: (kind) => `es de tipo ${kind}, no JSON`,
  deep: (most) => `tiene más de ${most} niveles`,
  nul: "contiene un carácter NUL",
  half: "contiene medio carácter",
};

export const row: typeof rowWords = {
  noEntry: "una anotación debe ser un objeto con value, stamp y base",
  stamp:
    "el sello está mal formado: 32 cifras hexadecimales en minúscula, un año anterior a 10000, un equipo",
  base: "la base está mal formada: un sello, o vacía",
  baseNewer: "la base no es anterior al sello",
  noValue: "falta el valor: escriba null para un valor quitado",
  value: (why) => `el valor ${why}`,
  tooLong: (most) => `el valor mide más de ${most} KiB`,
  settles: "settles debe listar sellos anteriores al de la propia anotación",
  noRow: "una fila debe ser un objeto con doc, path, entries y seen",
  document:
    "el documento es desconocido: shop, book, comparables, rubrics, decisions o listing: y 26 caracteres",
  path: "la ruta está mal formada: de 1 a 6 nombres de a-z, 0-9, _ . - unidos por /",
  entries: "entries debe ser una lista",
  seen: "seen debe ser una lista de sellos",
  empty: "la fila está vacía",
};
