/** Cuánto del recorrido está hecho. */
export const checked = (done: number, all: number, skipped: number): string =>
  skipped === 0 ? `${done} de ${all} revisados` : `${done} de ${all} revisados, ${skipped} no`;
