/** Names the program that runs: its first script, whose name changes with all that it loads. Empty in development. */
export const program = (): string => {
  const first = document.querySelector<HTMLScriptElement>('script[type="module"][src*="/assets/"]');
  return /-([\w-]+)\.js$/.exec(first?.src ?? "")?.[1] ?? "";
};
