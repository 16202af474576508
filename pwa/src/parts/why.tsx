import { type ComponentChildren, createContext } from "preact";
import { useContext, useId, useState } from "preact/hooks";
import type { Derivation } from "../generated/types.ts";
import { whyWords as words } from "../words/parts.ts";

const Derivations = createContext<Readonly<Record<string, Derivation>>>({});

/** Gives all figures within it the derivations of one judgement, by the figure's id. */
export function Derived(props: { why: Readonly<Record<string, Derivation>>; children: ComponentChildren }) {
  return <Derivations.Provider value={props.why}>{props.children}</Derivations.Provider>;
}

/** Whether the judgement around tells how this figure came about. */
export const useIsDerived = (of: string | undefined): boolean => {
  const why = useContext(Derivations);
  return of !== undefined && why[of] !== undefined;
};

/**
 * A button that opens, in place, how a figure came about; a step that rests on
 * another figure opens that one's steps within. Nothing where no derivation is known.
 */
export function Why(props: {
  of: string;
  /** Beside the figure itself, which then need not be said again. */
  short?: boolean;
  /** The figures it was opened from. */
  above?: readonly string[];
}) {
  const { of, above = [] } = props;
  const derivation = useContext(Derivations)[of];
  const [open, setOpen] = useState(false);
  const dom = useId();
  // A figure that is open already must not open again within itself.
  if (!derivation || above.includes(of)) return null;
  const { title, figure, steps } = derivation;
  return (
    <div class="why">
      <button
        type="button"
        class="why-ask"
        aria-expanded={open}
        aria-controls={open ? dom : undefined}
        onClick={() => setOpen(!open)}
      >
        <span>
          {words.ask(props.short ? "" : figure)}
          <span class="seen-by-reader"> {props.short ? words.told(title, figure) : title}</span>
        </span>
      </button>
      {open && (
        <section class="why-told" id={dom} aria-label={words.told(title, figure)}>
          <p class="why-title">{words.told(title, figure)}</p>
          <ol class="why-steps">
            {steps.map((step) => (
              <li key={step.text}>
                <span dir="auto">{step.text}</span>
                {step.of !== undefined && <Why of={step.of} above={[...above, of]} />}
              </li>
            ))}
          </ol>
        </section>
      )}
    </div>
  );
}
