import type { paperWords } from "../papers.ts";

/** Palabras de los documentos y tablas para uno mismo. */
export const papers: typeof paperWords = {
  title: "Documentos para usted",
  step: "Documentos para usted",
  stepAside: "registro, trabajos, tablas",
  back: "El anuncio",
  backToAll: "Documentos para usted",
  lead: "Contienen lo que solo usted debe ver. Para el vendedor hay un documento aparte.",
  papers: "Documentos",
  toSeller: "El documento para el vendedor",
  kinds: {
    record: {
      title: "Registro del peritaje",
      note: "Todo: hallazgos, presupuesto, valor, oferta, y cómo se llegó a cada cifra.",
    },
    jobs: {
      title: "Lista de trabajos",
      note: "Qué hacer y en qué orden, qué se necesita una sola vez, qué comprar y dónde, horas.",
    },
  },
  comparison: { title: "Hoja de comparación", note: "Varios anuncios lado a lado, desde Comparar." },
  compareFew: "Elija dos anuncios o más para comparar.",
  toCompare: "Comparar",
  tables: "Tablas y datos",
  tablesHint: "Para seguir en una hoja de cálculo o en otro programa.",
  csv: "Guardar como CSV",
  csvOf: (table) => `${table} (CSV)`,
  xlsx: "Guardar todo en un libro (XLSX)",
  xlsxHint: "El libro lo hace su servidor, así que necesita conexión.",
  json: "Guardar todo como JSON",
  jsonHint:
    "Un archivo con el anuncio, todos los hallazgos, precios y ajustes. Las fotos se nombran en él, no van dentro.",
  making: "Preparando…",
  saved: (name) => `Guardado: ${name}`,
  files: {
    estimate: "presupuesto-de-reparacion",
    record: "registro-del-peritaje",
    jobs: "lista-de-trabajos",
    comparison: "comparacion",
    tables: "tablas-del-peritaje",
  },
};
