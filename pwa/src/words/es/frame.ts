import type { failureWords, frameWords, storeWords, syncWords, undoWords, updateWords } from "../frame.ts";

export const frame: typeof frameWords = {
  name: "Asfound",
  skip: "Ir al contenido",
  sections: "Pantallas principales",
  listings: "Anuncios",
  comparables: "Comparables",
  prices: "Precios",
  settings: "Ajustes",
  notFound: "No existe esa página",
  notFoundWhy: "Esta dirección no lleva a nada en esta aplicación. No se perdió nada.",
  toListings: "A los anuncios",
  opening: "Abriendo los registros de este teléfono…",
};

export const sync: typeof syncWords = {
  savedHere: "Guardado en este teléfono",
  waiting: (n) => `${n} esperan al servidor`,
  onServer: "En el servidor",
  memory: "Sin guardar",
  refusedShort: (n) => `${n} rechazados`,
  detail: "Qué está guardado y dónde",
  savedHereLong:
    "Todo está guardado en este teléfono y funciona sin servidor. Aún no ha respondido ningún servidor.",
  waitingLong: (rows, photos) =>
    `${entries(rows)} y ${photos === 1 ? "1 foto" : `${photos} fotos`} están guardadas en este teléfono y aún no en el servidor.`,
  onServerLong: "Todo lo de este teléfono también lo guardó el servidor.",
  last: (when) => `El servidor respondió por última vez ${when}.`,
  never: "El servidor nunca ha respondido a este teléfono.",
  check: "Comprobar ahora",
  checking: "Comprobando…",
  noConnection: "Sin conexión. Todo se guarda en este teléfono y se envía cuando la haya.",
  close: "Cerrar",
  parked: (n) => `El servidor rechazó ${entries(n)}; todo se guarda aquí.`,
};

const entries = (n: number): string => (n === 1 ? "1 anotación" : `${n} anotaciones`);

export const undo: typeof undoWords = {
  undo: (label) => `Deshacer: ${label}`,
  short: "Deshacer",
  done: (label) => `Deshecho: ${label}`,
  kept: (n) =>
    n === 1
      ? "Un campo cambió desde entonces y queda como está."
      : `${n} campos cambiaron desde entonces y quedan como están.`,
};

export const store: typeof storeWords = {
  memory: "No se está guardando nada.",
  closed: (why) => `${why} Lo guardado antes se conserva.`,
  reload: "Volver a cargar",
  noStore:
    "Este navegador no da almacenamiento a la aplicación: todo se pierde al cerrar esta página. Exporte antes de irse.",
  closedWhy: "Los registros se cerraron bajo esta página.",
};

export const update: typeof updateWords = {
  ready: "Hay una versión nueva. Espera hasta que usted toque.",
  start: "Usar la versión nueva",
  elsewhere:
    "La versión nueva se puso en marcha en otra pestaña. Esta página sigue; vuelva a cargarla cuando le convenga.",
  reload: "Volver a cargar",
  noWorker: "Esta página no se puede abrir sin señal: el navegador se negó a guardar la aplicación.",
};

export const failure: typeof failureWords = {
  title: "Esta pantalla falló",
  kept: "Lo que anotó antes está guardado en este teléfono.",
  detail: "Qué pasó",
  again: "Intentar otra vez",
  home: "A los anuncios",
};
