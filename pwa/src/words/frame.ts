/** Words of the frame: the strip above, the bar below, and what the app says of itself. */
export const frameWords = {
  name: "Asfound",
  skip: "To the content",
  sections: "Main screens",
  listings: "Listings",
  comparables: "Comparables",
  prices: "Prices",
  settings: "Settings",
  notFound: "No such page",
  notFoundWhy: "This address leads nowhere in this app. Nothing is lost.",
  toListings: "To the listings",
  opening: "Opening the records on this phone…",
};

export const syncWords = {
  savedHere: "Saved on this phone",
  waiting: (n: number) => `${n} waiting for the server`,
  onServer: "On the server",
  memory: "Not kept",
  refusedShort: (n: number) => `${n} refused`,
  detail: "What is saved where",
  savedHereLong: "Everything is saved on this phone and works without a server. No server has answered yet.",
  waitingLong: (rows: number, photos: number) =>
    `${entries(rows)} and ${photos === 1 ? "1 photo" : `${photos} photos`} are saved on this phone and not yet on the server.`,
  onServerLong: "Everything on this phone has also been stored by the server.",
  last: (when: string) => `The server last answered ${when}.`,
  never: "The server has never answered this phone.",
  check: "Check now",
  checking: "Checking…",
  noConnection: "No connection. Everything is kept on this phone and goes when there is one.",
  close: "Close",
  parked: (n: number) => `The server refused ${entries(n)}; each is kept here.`,
};

const entries = (n: number) => (n === 1 ? "1 entry" : `${n} entries`);

export const undoWords = {
  undo: (label: string) => `Undo: ${label}`,
  short: "Undo",
  done: (label: string) => `Undone: ${label}`,
  kept: (n: number) =>
    n === 1
      ? "One field was changed since and stays as it is."
      : `${n} fields were changed since and stay as they are.`,
};

export const storeWords = {
  memory: "Nothing is being kept.",
  closed: (why: string) => `${why} What was saved before is kept.`,
  reload: "Reload",
  noStore:
    "This browser gives the app no storage: all is gone when this page closes. Export before you leave.",
  closedWhy: "The records were closed under this page.",
};

export const updateWords = {
  ready: "A new version is ready. It waits until you tap.",
  start: "Use the new version",
  elsewhere: "The new version was started in another tab. This page goes on; reload when it suits you.",
  reload: "Reload",
  noWorker: "This page cannot be opened without signal: the browser refused to keep the app.",
};

export const failureWords = {
  title: "This screen failed",
  kept: "What you entered before is kept on this phone.",
  detail: "What happened",
  again: "Try again",
  home: "To the listings",
};
