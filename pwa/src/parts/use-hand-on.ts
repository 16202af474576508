import { useState } from "preact/hooks";

interface Handing {
  /** What is copied. */
  text: string;
  /** What is handed to another app. */
  data: ShareData;
  words: { copied: string; notCopied: string; shared?: string };
  /** Marks the text on the screen, to be copied by hand. */
  mark: () => void;
}

/** Copying a text, or handing it to another app where the browser can; where neither works it is marked. */
export function useHandOn({ text, data, words, mark }: Handing) {
  const [said, setSaid] = useState<string | undefined>(undefined);
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(text);
      setSaid(words.copied);
    } catch {
      // No clipboard without a secure address, or it was not allowed.
      mark();
      setSaid(words.notCopied);
    }
  };
  const share = async (): Promise<void> => {
    try {
      await navigator.share(data);
      setSaid(words.shared);
    } catch (cause) {
      if (!(cause instanceof DOMException && cause.name === "AbortError")) await copy();
    }
  };
  return { said, copy, share: typeof navigator.share === "function" ? share : undefined };
}
