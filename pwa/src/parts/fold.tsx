import type { ComponentChildren } from "preact";
import { useRef } from "preact/hooks";

/** A row that opens onto its lines. Once opened from outside it closes by hand alone. */
export function Fold(props: {
  summary: ComponentChildren;
  /** Stands at the right of the row, in tabular figures. */
  aside?: ComponentChildren;
  open?: boolean;
  children: ComponentChildren;
}) {
  const opened = useRef(false);
  if (props.open) opened.current = true;
  return (
    <details class="fold" open={opened.current}>
      <summary class="fold-row">
        <span class="fold-title">{props.summary}</span>
        {props.aside !== undefined && <span class="fold-aside figures">{props.aside}</span>}
      </summary>
      <div class="fold-body">{props.children}</div>
    </details>
  );
}
