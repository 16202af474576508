import type { photoWords } from "../photos.ts";

export const photos: typeof photoWords = {
  title: "Fotos",
  take: "Tomar una foto",
  choose: "Elegir archivos",
  adding: (n) => (n === 1 ? "Guardando 1 foto…" : `Guardando ${n} fotos…`),
  notHere: "La foto aún no está en este dispositivo",
  alt: (n, of) => `Foto ${n} de ${of}`,
  open: (n) => `Abrir la foto ${n}`,
  label: "Foto agregada",
  removeLabel: "Foto quitada",
  problem: (name, why) => `${name}: ${why}`,
  unnamed: "Foto",
};
