/** Words of putting two records of one listing together. */
export const uniteWords = {
  title: "Put two records together",
  back: "The listing",
  choose: "Which other record is of the same piece?",
  chooseHint: "Only records of the same kind are shown.",
  none: "There is no other record of this kind. Records of two kinds cannot be put together: change the kind of one first.",
  kinds: (mine: string, theirs: string) =>
    `One is “${mine}”, the other “${theirs}”: only records of one kind can be put together. Change the kind of one first.`,
  gone: "The other record is not on this phone any more. Choose again.",
  kept: "Goes on",
  away: "Is put away",
  other: "Choose another",
  taken: "Taken over as it is",
  takenNothing: "Nothing: this record has all that the other one tells, or it is decided below.",
  fields: (n: number) => (n === 1 ? "1 field" : `${n} fields`),
  checks: (n: number) => (n === 1 ? "1 check" : `${n} checks`),
  photos: (n: number) => (n === 1 ? "1 photo" : `${n} photos`),
  notes:
    "Notes on the same check are kept one after the other. Comparables belong to the kind, so both have them already.",
  links: (n: number) =>
    n === 1
      ? "1 link given to a seller stays with the record that is put away."
      : `${n} links given to sellers stay with the record that is put away.`,
  differ: (n: number) => (n === 1 ? "1 thing is told differently" : `${n} things are told differently`),
  differNot: "Nothing is told differently.",
  lead: "Of two grades the lower one is chosen, of the rest what was entered last. Change what is wrong.",
  mine: "This record",
  theirs: "The other one",
  both: "Both, one after the other",
  kindVersion: (kind: string, version: number) => `${kind}, version ${version}`,
  go: "Put them together",
  label: (title: string) => `Put together: ${title}`,
  hint: "One Undo takes all of it back.",
};
