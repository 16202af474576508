/** Words of the parts that compute, where one of them fails. */
export const engineWords = {
  stopped: "The engine stopped. Your findings are kept; scores and prices are not computed until you reload.",
  notLoaded: (cause: string) =>
    `The engine could not be loaded, so scores and prices are not computed until you reload. What you enter is kept. (${cause})`,
  notStarted: (cause: string) => `The engine could not start: ${cause}`,
  fileGone: "The file could not be read: it was moved or changed. Choose it again.",
  noChecks: (cause: string) => `The list of checks could not be loaded (${cause}): reload the page.`,
};

export const editorWords = {
  stopped: "The rubric editor stopped. What you entered is kept; go on, and it starts again.",
  notLoaded: (cause: string) =>
    `The rubric editor could not be loaded. What you entered is kept: reload the page. (${cause})`,
  notStarted: (cause: string) => `The rubric editor could not start: ${cause}`,
};

export const paperMakerWords = {
  stopped: "The part that makes papers stopped. What you entered is kept; go on, and it starts again.",
  notLoaded: (cause: string) =>
    `The part that makes papers could not be loaded. What you entered is kept: reload the page. (${cause})`,
  notStarted: (cause: string) => `The part that makes papers could not start: ${cause}`,
};
