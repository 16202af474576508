import { useEffect, useState } from "preact/hooks";
import { photoUrl } from "../data/photo.ts";
import { watch } from "../data/read.ts";
import { photoWords as words } from "../words/photos.ts";

/** A stored picture, or a plain line where it is not on this device yet. */
export function PhotoImage({ hash, alt, class: name }: { hash: string; alt: string; class?: string }) {
  const [url, setUrl] = useState<string | undefined | null>(null);
  useEffect(() => {
    setUrl(null);
    // Watched, since a picture taken on another device may arrive while this screen is open.
    return watch(
      () => photoUrl(hash),
      (found) => setUrl(found),
      () => setUrl(undefined),
    );
  }, [hash]);
  if (url === null) return <span class={`photo-gap ${name ?? ""}`} />;
  if (url === undefined) return <span class={`photo-gap ${name ?? ""}`}>{words.notHere}</span>;
  return <img class={name ?? ""} src={url} alt={alt} decoding="async" />;
}
