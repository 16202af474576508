import type { ComponentChildren } from "preact";

/** A row that opens onto its lines. */
export function Fold(props: {
  summary: ComponentChildren;
  /** Stands at the right of the row, in tabular figures. */
  aside?: ComponentChildren;
  open?: boolean;
  children: ComponentChildren;
}) {
  return (
    <details class="fold" open={props.open ?? false}>
      <summary class="fold-row">
        <span class="fold-title">{props.summary}</span>
        {props.aside !== undefined && <span class="fold-aside figures">{props.aside}</span>}
      </summary>
      <div class="fold-body">{props.children}</div>
    </details>
  );
}
