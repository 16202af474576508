/** Words of why a picture is not taken. */
export const pictureWords = {
  unread: "This photo could not be read: choose it again, or copy it to this device first.",
  noRoom: (lacking: number) =>
    `No room for this photo: free ${lacking} MB on this device, then add it again. Your answers are kept.`,
  unopened: "This photo could not be opened; it may be damaged. Take it again.",
  unshrunk: "This browser could not shrink the photo: close other tabs and add it again.",
  copyUnopened: "A photo of this paper cannot be opened; it may be damaged. Leave it out, or take it again.",
  copyUnshrunk: "This browser could not shrink the photos: close other tabs and try again.",
  empty: "This photo is empty (0 bytes): take it again, or choose another file.",
  heavy: (have: number, most: number) =>
    `This photo is ${have} MB: at most ${most} MB. Choose a smaller one.`,
  noSize: "This photo is damaged (no width or height): take it again.",
  sides: (width: number, height: number, most: number) =>
    `This photo has ${width} x ${height} pixels: at most ${most} a side. Choose a smaller one, or crop it.`,
  pixels: (width: number, height: number, mostMillions: number) =>
    `This photo has ${width} x ${height} pixels: at most ${mostMillions} million in all. Choose a smaller one.`,
  cutOff: "This photo is cut off in the middle: take it again, or copy it once more.",
  heic: "This photo is in the HEIC format, which few browsers can open. Set the camera to the most compatible format (JPEG), or save the photo as JPEG and add that.",
  gif: "This is a GIF picture: use a JPEG, PNG or WebP photo.",
  noPhoto: "This file is not a photo: use a JPEG, PNG or WebP picture.",
  noPngHeader: "This photo is damaged (no PNG header): take it again.",
  noMarker: "This photo is damaged (a marker is missing): take it again.",
  webpPart: "This photo is damaged (unknown WebP part): take it again.",
};
