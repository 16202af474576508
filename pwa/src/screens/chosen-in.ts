/** The listings chosen, as they stand in an address. */
export const chosenIn = (of: string | undefined): string[] => [
  ...new Set((of ?? "").split(",").filter((id) => id !== "")),
];
