import { useEffect, useState } from "preact/hooks";
import { photoUrl } from "../data/photo.ts";
import { photoWords as words } from "../words/photos.ts";

/** A stored picture, or a plain line where it is not on this device yet. */
export function PhotoImage({ hash, alt, class: name }: { hash: string; alt: string; class?: string }) {
  const [url, setUrl] = useState<string | undefined | null>(null);
  useEffect(() => {
    let gone = false;
    setUrl(null);
    photoUrl(hash).then(
      (found) => !gone && setUrl(found),
      () => !gone && setUrl(undefined),
    );
    return () => {
      gone = true;
    };
  }, [hash]);
  if (url === null) return <span class={`photo-gap ${name ?? ""}`} />;
  if (url === undefined) return <span class={`photo-gap ${name ?? ""}`}>{words.notHere}</span>;
  return <img class={name ?? ""} src={url} alt={alt} decoding="async" />;
}
