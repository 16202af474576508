import { checkedWords } from "./parts.ts";

/** Words of the walkaround: the list and the single check. */
export const walkWords = {
  title: "Walkaround",
  back: "The listing",
  backToList: "All checks",
  filter: "Show",
  all: (n: number) => `All ${n}`,
  left: (n: number) => `Left ${n}`,
  progress: checkedWords,
  minutesLeft: (n: number) => `about ${n} minutes left`,
  noneLeft: "Every check that applies has an answer.",
  toResult: "Result",
  jump: "Next open check",
  open: "open",
  held: "held",
  heldLong: "Not to be tried now",
  byMeasure: "by the measurement",
  noRubric:
    "The kind of equipment is not told or not known to this version, so there is nothing to check yet.",
  setKind: "Choose the kind",
  unknownCheck: "This kind of equipment has no such check. It may belong to another version.",
  notApplying:
    "By what was told of this equipment, this check does not apply. An answer given here is kept but not counted.",
  engine: "The engine did not answer, so checks that do not apply are shown too.",
};

/** The state the equipment must be in, by the words of the rubric. */
export const stateWords: Record<string, string> = {
  documents: "Papers and plates: touch nothing yet",
  "power-off": "Power off and kept off",
  unloaded: "Running, no load",
  loaded: "Under load, last of all",
};

export const cautionWords = {
  title: "Before you walk around it",
  lead: "Read these once at this machine. The checks open after that.",
  manual:
    "The maker's manual comes first. Local code decides. If you are not sure that a step can be done without danger to anyone, leave it and mark it not checked.",
  read: "I have read these",
  again: "Cautions for this kind",
};

export const checkWords = {
  onlyIf: (ask: string, options: readonly string[]) =>
    `This check is only for: ${options.join(" or ")}. Not told yet: ${ask}`,
  tellIt: "Tell which it is",
  kinds: { look: "Look", measure: "Measure", run: "Run", read: "Read" } as Record<string, string>,
  minutes: (n: number) => `about ${n} min`,
  instrument: (list: string) => `You need: ${list}`,
  nothingNeeded: "No instrument needed",
  heldTitle: "Not to be tried now",
  heldDo: "Mark it not checked, or enter only what the seller showed by himself.",
  dangerFailed:
    "A danger point failed: do not use it. Stand clear and tell the seller. Go on with power-off points only.",
  toVerdict: "To the verdict",
  place: (n: number, of: number) => `Check ${n} of ${of}`,
  how: "How",
  measured: "Measured",
  fixed: "Taken as given",
  proposes: (grade: string) => `This measurement proposes: ${grade}. It counts unless you grade otherwise.`,
  capped: (grade: string) => `The measured value is beyond its limit: no grade better than ${grade} counts.`,
  grade: "What did you find?",
  gradeLabel: (title: string) => `Grade: ${title}`,
  measuredLabel: (title: string) => `Measured: ${title}`,
  noteLabel: (title: string) => `Note: ${title}`,
  skip: "Not checked, because",
  skipLabel: (title: string) => `Not checked: ${title}`,
  clear: "Take the answer back",
  clearLabel: (title: string) => `Answer taken back: ${title}`,
  note: "Note",
  noteHint: "What the next person must know: where, how much, since when.",
  photos: "Photos of this point",
  previous: "Previous",
  next: "Next",
  nextOpen: "Next open",
  toList: "All checks",
  keys: "Keys: 0 to 4 grade, N next, P previous, Ctrl+Z undo.",
  sectionCaution: "For this part of the walkaround",
  saved: (what: string) => `Kept: ${what}`,
  skipped: (reason: string) => `Not checked: ${reason}`,
};
