/** Words of photos. */
export const photoWords = {
  title: "Photos",
  take: "Take a photo",
  choose: "Choose files",
  adding: (n: number) => (n === 1 ? "Keeping 1 photo…" : `Keeping ${n} photos…`),
  notHere: "Photo not on this device yet",
  alt: (n: number, of: string) => `Photo ${n} of ${of}`,
  open: (n: number) => `Open photo ${n}`,
  label: "Photo added",
  removeLabel: "Photo removed",
  problem: (name: string, why: string) => `${name}: ${why}`,
  unnamed: "Photo",
};
