import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";

/** A fold whose lines are made only once it is opened: for lists of hundreds. */
export function OpenedFold(props: {
  summary: ComponentChildren;
  aside?: ComponentChildren;
  open?: boolean;
  children: () => ComponentChildren;
}) {
  const [open, setOpen] = useState(props.open ?? false);
  return (
    <details class="fold" open={open} onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary class="fold-row">
        <span class="fold-title">{props.summary}</span>
        {props.aside !== undefined && <span class="fold-aside figures">{props.aside}</span>}
      </summary>
      {open && <div class="fold-body">{props.children()}</div>}
    </details>
  );
}
