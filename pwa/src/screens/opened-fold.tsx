import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";

/** A fold whose lines are made only once it is opened: for lists of hundreds. */
export function OpenedFold(props: {
  summary: ComponentChildren;
  aside?: ComponentChildren;
  open?: boolean;
  onOpen?: (open: boolean) => void;
  children: () => ComponentChildren;
}) {
  const [open, setOpen] = useState(props.open ?? false);
  const toggle = (next: boolean) => {
    setOpen(next);
    props.onOpen?.(next);
  };
  return (
    <details class="fold" open={open} onToggle={(e) => toggle(e.currentTarget.open)}>
      <summary class="fold-row">
        <span class="fold-title">{props.summary}</span>
        {props.aside !== undefined && <span class="fold-aside figures">{props.aside}</span>}
      </summary>
      {open && <div class="fold-body">{props.children()}</div>}
    </details>
  );
}
