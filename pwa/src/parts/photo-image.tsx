import { useEffect, useRef, useState } from "preact/hooks";
import type { PhotoMark } from "../data/photo-marks.ts";
import { alteredOnServer } from "../sync/photos.ts";
import { proofWords } from "../words/photo.ts";
import { photoWords as words } from "../words/photos.ts";
import { PhotoLayer } from "./photo-layer.tsx";
import { useShownPhoto } from "./use-shown-photo.ts";

/**
 * A stored picture with its marks, or a plain line where it is not on this device yet or is
 * not the recorded one. Only pictures near the screen are read, so that a long list holds few.
 */
export function PhotoImage(props: {
  hash: string;
  alt: string;
  class?: string;
  marks?: readonly PhotoMark[];
  /** thumb: cut to a square; side: all of it. */
  size?: "thumb" | "side";
}) {
  const frame = useRef<HTMLSpanElement>(null);
  const near = useNear(frame);
  const shown = useShownPhoto(props.hash, near);
  const name = props.class ?? "";
  return (
    <span class={name ? `photo-frame ${name}-frame` : "photo-frame"} ref={frame}>
      {shown?.state === "whole" ? (
        <>
          <img class={name} src={shown.url} alt={props.alt} decoding="async" />
          {props.marks && props.marks.length > 0 && (
            <PhotoLayer
              marks={props.marks}
              width={shown.width}
              height={shown.height}
              size={props.size ?? "thumb"}
            />
          )}
        </>
      ) : (
        <span class={`photo-gap ${name}`}>
          {shown && <PhotoGone hash={props.hash} state={shown.state} />}
        </span>
      )}
    </span>
  );
}

/** Why there is no picture. */
export function PhotoGone({ hash, state }: { hash: string; state: "missing" | "altered" }) {
  if (state === "altered") return <b>{proofWords.altered}</b>;
  return <>{alteredOnServer(hash) ? proofWords.alteredThere : words.notHere}</>;
}

/** Whether an element is on the screen or within a few screens of it. */
function useNear(element: { current: HTMLElement | null }): boolean {
  const [near, setNear] = useState(false);
  useEffect(() => {
    const at = element.current;
    if (!at) return;
    const watcher = new IntersectionObserver((seen) => setNear(seen.at(-1)?.isIntersecting === true), {
      rootMargin: "250% 0px",
    });
    watcher.observe(at);
    return () => watcher.disconnect();
  }, [element]);
  return near;
}
