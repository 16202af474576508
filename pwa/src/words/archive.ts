/** Words of the backup file: why it cannot be made or read, and what of it is left out. */
export const archiveWords = {
  tooManyPhotos: (mostGB: number) =>
    `There are more than ${mostGB} GB of photos: too many for one backup file. Let the server hold them instead.`,
  notMade: "The backup file could not be made. Try again.",
  newer: (version: number, most: number) =>
    `This backup file was written by a newer app (file version ${version}, this app reads up to ${most}). Nothing was changed. Update the app, then read it again.`,
  readFirst: "Read the backup file first, then confirm.",
  broken: (why: string) =>
    `This backup file cannot be read (${why}). Nothing was changed. Choose a whole backup file, or save it again on the other device.`,
  empty: "it is empty",
  contents: "its table of contents is damaged",
  noEnd: "its end is missing, or it is no zip file",
  damaged: (name: string) => `"${name}" is damaged`,
  noRecords: (name: string) => `there is no ${name} in it; it is no backup of this app`,
  tooLarge: (name: string) => `${name} is too large`,
  noJson: (name: string) => `${name} is not whole JSON text`,
  noBackup: "it is no backup of this app",
  noVersion: "its version is missing",
  noRows: (name: string) => `${name} has no list of rows`,
  future: "it lies in the future: the clock of that device, or of this one, is wrong",
  row: (n: number) => `row ${n}`,
  photos: "photos",
  photoEntry: "an entry of the list of photos is malformed",
  noPhoto: "the file is missing in the backup",
  largePhoto: (mostMB: number) => `the photo is larger than ${mostMB} MB`,
  otherPhoto: "the photo is not the one its name says",
};
