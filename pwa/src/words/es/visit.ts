import type { visitWords } from "../visit.ts";

export const visit: typeof visitWords = {
  title: "Antes de la visita",
  step: "Antes de la visita",
  back: "El anuncio",
  toWalk: "Recorrerlo",
  loading: "Calculando qué preguntar y llevar…",
  stepAside: "qué preguntar y llevar",

  questions: "Pregunte al vendedor",
  noQuestions: "La pauta de esta clase aún no tiene preguntas.",
  allAsked: "Cada pregunta está hecha o la responde el anuncio.",
  copy: "Copiar las preguntas",
  copied: "Copiado. Péguelo en su mensaje al vendedor.",
  share: "Compartirlas",
  shared: "Entregado.",
  notCopied: "Este navegador no deja copiar a la aplicación. El texto está marcado abajo: cópielo de ahí.",
  message: "El mensaje tal como se envía",
  messageField: "Mensaje al vendedor",
  asked: "Preguntado",
  answer: "Lo que dijo el vendedor",
  why: (why) => `Por qué: ${why}`,
  askedLabel: (ask) => `Preguntado: ${ask}`,
  told: (n) => (n === 1 ? "1 la responde el anuncio" : `${n} las responde el anuncio`),

  bring: "Lleve",
  instruments: "Instrumentos",
  noInstruments: "No hace falta ningún instrumento.",
  wear: "Póngase",
  besides: "Y además",
  checks: (n) => (n === 1 ? "1 punto" : `${n} puntos`),
  needs: (checks, minutes) => `${checks === 1 ? "1 punto" : `${checks} puntos`} · ${Math.round(minutes)} min`,

  time: "Tiempo en la máquina",
  minutes: (n) => `${Math.round(n)} min`,
  all: "Todo",

  without: "Lo que no se puede juzgar",
  withoutHint:
    "Pregunte antes si se puede poner en marcha, cargar y alcanzar: esto es lo que no llegaría a saber.",
  certain: "cierto",
  share100: (basisPoints) => `${Math.round(basisPoints / 100)} % de la seguridad`,
  print: "Imprimir esta página",
  cautions: "Precauciones",
};
