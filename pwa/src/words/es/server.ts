import type { linkTroubleWords, photoRefusedWords, serverWords } from "../server.ts";

export const server: typeof serverWords = {
  none: "Sin conexión con el servidor.",
  busy: "El servidor está ocupado y pide esperar; se intentará de nuevo por sí solo.",
  unpaired:
    "El servidor del taller no conoce (ya) este equipo: vincúlelo otra vez en los ajustes. No se perdió nada.",
  full: "El disco del servidor está lleno: libere espacio allí. Mientras tanto, todo queda en este equipo.",
  fault: (status) =>
    `El servidor tiene una falla (${status}); se intentará de nuevo por sí solo. Mientras tanto, todo queda en este equipo.`,
  noPicture: "El servidor no dio ninguna imagen.",
  garbled:
    "Esta aplicación no entiende la respuesta del servidor: actualice la aplicación (vuelva a cargarla), o el servidor.",
  cutOff: "Se cortó la línea.",
  stranger: (why) =>
    `El servidor no entiende a esta aplicación: ${why}. Actualice la aplicación, o el servidor.`,
  clockAhead: "El reloj de este equipo va adelantado. Su hora se corrigió; ponga el reloj en hora.",
  conflict: "El servidor se negó a sincronizar. Actualice la aplicación, o el servidor.",
  timesRefused:
    "El servidor rechaza una y otra vez las horas de este equipo: ponga su reloj en hora e intente otra vez.",
  unknown:
    "La sincronización se detuvo por un motivo que la aplicación no conoce; se intentará de nuevo. Todo queda en este equipo.",
  refused: "rechazado por el servidor",
  refusedWith: (status) => `rechazado por el servidor (${status})`,
};

export const photoRefused: typeof photoRefusedWords = {
  missing: "la imagen falta en este equipo",
  altered: "la imagen de este equipo no es la que se registró",
  tooLarge: "la foto es demasiado grande para el servidor",
  wrongHash: "lo que llegó al servidor no es la imagen registrada",
  noPicture: "para el servidor no es una imagen utilizable",
};

export const linkTrouble: typeof linkTroubleWords = {
  noLink:
    "Un enlace necesita el servidor, y ahora no se puede alcanzar. El PDF y la impresión funcionan sin él; haga el enlace cuando haya conexión.",
  noWithdrawal:
    "Solo el servidor puede retirar el enlace, y ahora no se puede alcanzar: todavía se abre. Intente otra vez cuando haya conexión.",
  noState: "El servidor sabe cómo está el enlace, y ahora no se puede alcanzar.",
  noWorkbook:
    "Un libro de cálculo necesita el servidor, y ahora no se puede alcanzar. Las tablas como CSV funcionan sin él.",
  busy: "El servidor está ocupado: intente otra vez en un minuto.",
  unpaired: "El servidor rechaza este equipo. No se hizo nada.",
  fault:
    "El servidor tiene una falla y no hizo nada: intente más tarde. El PDF y la impresión funcionan sin él.",
  garbled:
    "Esta aplicación no entiende la respuesta del servidor: actualice la aplicación (vuelva a cargarla), o el servidor.",
  made: "Ese enlace ya existe, y se abrió o se retiró: haga uno nuevo.",
  full: "El servidor ya tiene todos los enlaces que puede tener: retire enlaces viejos e intente otra vez.",
  tooLarge: "Es demasiado grande para el servidor: quite algo, primero las fotos.",
  cutOff: "Se cortó la línea y no se hizo nada: intente otra vez.",
  refused: (why) => `El servidor no lo aceptó: ${why}`,
  said: (status) => `el servidor dijo ${status}`,
};
