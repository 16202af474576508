/** Gives a made file to the browser, which saves it where the user keeps files. */
export function handOut(name: string, blob: Blob): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The download reads the address after the click returns.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
