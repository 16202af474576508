import type { resultScreenWords } from "../result.ts";
import { checked } from "./parts.ts";

export const resultScreen: typeof resultScreenWords = {
  title: "Resultado",
  backTitle: "Anuncio",
  loading: "Calculando el juicio…",
  problemTitle: "Aún sin juicio",
  keptSafe: "Lo que anotó está guardado en este dispositivo.",
  verdict: "Veredicto",
  points: "Lo que hay detrás",
  morePoints: (found, unchecked) =>
    [found > 0 ? `${found} más hallados` : "", unchecked > 0 ? `${unchecked} más sin revisar` : ""]
      .filter((part) => part !== "")
      .join(", "),
  always: "Con todo veredicto",
  notChecked: "no revisado",
  prices: "Qué pagar",
  opening: "Oferta inicial",
  fair: "Oferta justa",
  walkAway: "Precio tope",
  odds: (n) => `sale ganando en ${n} de 100`,
  noneOfThree: "Inicial, justa y tope",
  noPrice: "ninguno",
  notAsGift: "Ni regalado con esta probabilidad.",
  addWorth: "Diga cuánto vale uno en buen estado",
  scores: "Puntajes",
  safety: "Seguridad",
  condition: "Estado",
  scoreOf: (value) => `${value} de 100`,
  scoreNone: "nada revisado",
  band: (low, high, coverage) =>
    `Rayado: todavía puede quedar entre ${low} y ${high}, pues se revisó el ${coverage} del peso.`,
  scoreLines: "Qué cuenta en él",
  scoreChecked: (done, applies) => `${done} de ${applies} puntos revisados`,
  scoreLabel: (name, value, low, high) =>
    `${name}: ${value}; entre ${low} y ${high} cuando se revise el resto.`,
  weight: (w) => `peso ${w}`,
  hidden: "Lo que no se revisó, punto por punto",
  chance: (share) => `${share} de que esté mal`,
  hiddenHigh: (amount) => `En uno de cada diez casos cuesta más de ${amount}.`,
  care: "Cómo se cuidó, y lo que no se revisó",
  careKey: "Relleno: según los hallazgos. Triángulo: lo que se creía antes de mirar.",
  careClasses: ["bien cuidado", "corriente", "descuidado"],
  careBefore: (share) => `${share} antes de mirar`,
  belief: "Lo que usted creía antes de mirar",
  beliefOwn: "propio",
  beliefAsk: "Antes de mirar, ¿qué tan probable era que estuviera",
  beliefHint:
    "En por ciento; juntos suman 100. Sustituye lo usual para la clase, su edad y su vendedor. No se guarda nada hasta que los tres sumen 100.",
  beliefField: (name) => `${name} (%)`,
  beliefOf: (name, problem) => `${name}: ${problem}`,
  beliefSum: (sum) => `Los tres suman ${sum} %: juntos deben sumar 100 %.`,
  beliefBack: "Volver a lo usual",
  setBelief: "Creencia propia de cómo se cuidó",
  next: "Qué revisar ahora",
  nextNone: "Se revisaron todos los puntos que corresponden.",
  nextNoneOpen: (skipped) =>
    skipped === 1
      ? "Todos los puntos tienen respuesta; 1 no se revisó."
      : `Todos los puntos tienen respuesta; ${skipped} no se revisaron.`,
  must: "obligado",
  minutes: (n) => `${n} min`,
  gain: (amount, perMinute) => `saberlo vale ${amount}, ${perMinute} por minuto`,
  noGain: "no cambiaría el precio",
  nextMore: (n, must) =>
    must === 0
      ? `${n} más`
      : must === n
        ? `${n} más que hay que revisar`
        : `${n} más, ${must} de ellos obligados`,
  nextAll: "Todo lo que falta, primero el peligro, luego por valor por minuto",
  minutesLeft: "Minutos que tengo",
  planWorking: "Calculando lo que alcanza…",
  planNoWorth:
    "Lo que vale los minutos se ve cuando se conoce un valor: anote comparables o el precio de uno nuevo. Hasta entonces recórralo todo, primero el peligro.",
  planList: "Lo que alcanza, en el orden del recorrido",
  heldTitle: "No intentarlo ahora",
  notes: "Conviene saber",
  progress: (graded, applies, skipped, minutes) =>
    `${checked(graded, applies, skipped)}${minutes === "0" ? "." : `; faltan unos ${minutes} minutos.`}`,
  toEstimate: "Presupuesto",
  toOffer: "Oferta",
};
