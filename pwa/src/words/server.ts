/** Words of what goes between this device and the server, and of what it refused. */
export const serverWords = {
  none: "No connection to the server.",
  busy: "The server is busy and asks to wait; trying again by itself.",
  unpaired:
    "The shop's server does not know this device (any more): pair it again in the settings. Nothing is lost.",
  full: "The disk of the server is full: free some space there. Everything stays on this device meanwhile.",
  fault: (status: number) =>
    `The server has a fault (${status}); trying again by itself. Everything stays on this device meanwhile.`,
  noPicture: "The server gave no picture.",
  garbled: "The server's answer makes no sense to this app: update the app (reload it), or the server.",
  cutOff: "The line broke off.",
  stranger: (why: string) =>
    `The server does not understand this app: ${why}. Update the app, or the server.`,
  clockAhead: "The clock of this device is ahead. Its time was corrected for; set the clock right.",
  conflict: "The server refused to sync. Update the app, or the server.",
  timesRefused: "The server keeps refusing the times of this device: set its clock right, then try again.",
  unknown:
    "Syncing stopped for a reason the app does not know; it will try again. Everything stays on this device.",
  refused: "refused by the server",
  refusedWith: (status: number) => `refused by the server (${status})`,
};

/** Why a photo does not go to the server. */
export const photoRefusedWords = {
  missing: "the picture is missing on this device",
  altered: "the picture on this device is not the one that was recorded",
  tooLarge: "the photo is too large for the server",
  wrongHash: "what arrived at the server is not the recorded picture",
  noPicture: "the server takes it for no usable picture",
};

/** Why there is no link, or no workbook. */
export const linkTroubleWords = {
  noLink:
    "A link needs the server, and it cannot be reached now. The PDF and printing work without it; make the link when there is a connection.",
  noWithdrawal:
    "The link can be withdrawn only by the server, and it cannot be reached now: it still opens. Try again when there is a connection.",
  noState: "The server knows how the link stands, and it cannot be reached now.",
  noWorkbook: "A workbook needs the server, and it cannot be reached now. The tables as CSV work without it.",
  busy: "The server is busy: try again in a minute.",
  unpaired: "The server refuses this device. Nothing was made.",
  fault: "The server has a fault and made nothing: try again later. The PDF and printing work without it.",
  garbled: "The server's answer makes no sense to this app: update the app (reload it), or the server.",
  made: "There is such a link already, and it was opened or withdrawn: make a new one.",
  full: "The server holds as many links as it may: withdraw old ones, then try again.",
  tooLarge: "It is too large for the server: leave something out, photos first.",
  cutOff: "The line broke off and nothing was made: try again.",
  refused: (why: string) => `The server did not take it: ${why}`,
  said: (status: number) => `the server said ${status}`,
};
