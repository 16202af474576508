/** A choice of a limit for reading: tongue-guard as tongue guard, 51-75 as it stands. */
export const wordTitle = (word: string): string => word.replaceAll(/(?<=\p{L})-(?=\p{L})/gu, " ");
