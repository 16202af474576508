import type { listingsWords, newListingWords } from "../listings.ts";
import { checked } from "./parts.ts";

export const listings: typeof listingsWords = {
  title: "Anuncios",
  add: "Agregar un anuncio",
  compare: "Comparar",
  what: "Valore equipo usado antes de comprarlo: recórralo, obtenga un veredicto, un presupuesto de reparación y tres precios.",
  emptyTitle: "Todavía no hay nada que valorar",
  emptyLead: "Un anuncio es un equipo usado que alguien ofrece. Lo que se hace aquí con él:",
  steps: [
    "Agréguelo según el anuncio: qué clase es, cuánto piden, a qué distancia está.",
    "Donde el vendedor, recórralo punto por punto, en un orden que deja la corriente y la carga para el final. No hace falta señal.",
    "Lea lo que se halló, lo que cuesta repararlo y hasta qué precio sale ganando.",
  ],
  asking: "Piden",
  noAsking: "Sin precio",
  untitled: (kind) => (kind === "" ? "Anuncio sin título" : `${kind}, aún sin título`),
  unknownKind: "Clase desconocida en esta versión",
  noKind: "Clase aún sin indicar",
  checks: checked,
  notWalked: (all) => `Aún sin recorrer · ${all} puntos`,
  demo: "Demostración inventada",
  conflicts: (n) => (n === 1 ? "1 campo anotado dos veces" : `${n} campos anotados dos veces`),
  changedAfterDelete: "Borrado, pero cambiado después en otro dispositivo. Ábralo para decidir.",
  deletedTitle: (n) => `Borrados (${n})`,
  failed: "No se pudieron leer los anuncios:",
};

export const newListing: typeof newListingWords = {
  title: "Anuncio nuevo",
  ask: "¿Qué clase de equipo es?",
  lead: "La clase decide qué se revisa. El anuncio se crea al tocarla; título, precio y lugar vienen después.",
  parts: (checks, minutes) => `${checks} puntos · unos ${minutes} minutos`,
  none: "No se conoce ninguna clase de equipo: el motor de cálculo no arrancó. Vuelva a cargar la página.",
  label: (kind) => `Anuncio nuevo: ${kind}`,
};
