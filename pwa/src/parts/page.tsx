import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { pageWords as words } from "../words/parts.ts";

/**
 * The frame of a screen: title, way back, content, and the actions low on the
 * screen where a thumb reaches them.
 */
export function Page(props: {
  title: string;
  /** Where Back leads; left out on the four main screens. */
  back?: string;
  backTitle?: string;
  /** Above the title: what must be known first. */
  lead?: ComponentChildren;
  actions?: ComponentChildren;
  children: ComponentChildren;
}) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${props.title} · Asfound`;
  }, [props.title]);
  useEffect(() => {
    // A new screen is announced and starts at its top.
    heading.current?.focus({ preventScroll: true });
    window.scrollTo(0, 0);
  }, []);
  return (
    <main class={props.actions ? "page page-acting" : "page"} id="main">
      {props.back !== undefined && (
        <a class="page-back" href={props.back}>
          <span aria-hidden="true">‹</span>
          <span dir="auto">{props.backTitle ?? words.back}</span>
        </a>
      )}
      {props.lead}
      <h1 class="page-title" tabIndex={-1} ref={heading} dir="auto">
        {props.title}
      </h1>
      {props.children}
      {props.actions && <div class="page-actions">{props.actions}</div>}
    </main>
  );
}

/** A line of print for what is wrong or must be known; urgent ones are read out at once. */
export function Banner(props: {
  tone: "problem" | "note" | "danger";
  urgent?: boolean;
  children: ComponentChildren;
}) {
  return (
    <div class={`banner banner-${props.tone}`} role={props.urgent ? "alert" : "status"}>
      {props.children}
    </div>
  );
}
