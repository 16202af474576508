import { useEffect, useRef } from "preact/hooks";
import type { Catalogue, Check } from "../generated/types.ts";
import { Notches } from "../parts/notches.tsx";
import { checkWords as words } from "../words/walkaround.ts";
import { gradeText, offered } from "./grade-words.ts";

/** The grades of this check with what each looks like. */
export function CheckGrades(props: {
  check: Check;
  catalogue: Catalogue;
  given: number | undefined;
  /** What the measurement proposes. */
  proposed: number | undefined;
  /** The best grade that counts where a measured value is beyond its limit. */
  cap: number | undefined;
  choose: (grade: number) => void;
}) {
  const word = (n: number) => props.catalogue.grades[n] ?? "";
  const before = useRef(props.given);
  const chosen = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    // A grade given by key may lie off the screen; the answer must be seen.
    if (props.given !== undefined && props.given !== before.current) {
      chosen.current?.scrollIntoView({ block: "nearest" });
    }
    before.current = props.given;
  }, [props.given]);
  const classOf = (n: number) => {
    const proposed = props.proposed === n && props.given === undefined ? " grade-proposed" : "";
    return `grade${proposed}${n === 0 && props.check.hazard === "danger" ? " grade-stop" : ""}`;
  };
  const named = (n: number) => `${n} ${word(n)}`;
  return (
    <section class="block" aria-label={words.grade}>
      <h2 class="block-title">{words.grade}</h2>
      {props.proposed !== undefined && props.given === undefined && (
        <p role="status">{words.proposes(named(props.proposed))}</p>
      )}
      {props.cap !== undefined && <p role="status">{words.capped(named(props.cap))}</p>}
      <div class="grades">
        {offered(props.check).map((n) => (
          <button
            key={n}
            type="button"
            class={classOf(n)}
            ref={props.given === n ? chosen : null}
            aria-pressed={props.given === n}
            aria-keyshortcuts={String(n)}
            disabled={props.cap !== undefined && n > props.cap}
            onClick={() => props.choose(n)}
          >
            <Notches grade={n} word={word(n)} />
            <span class="grade-text">{gradeText(props.check, n)}</span>
          </button>
        ))}
      </div>
    </section>
  );
}

/** Why it was not checked: always with a reason, one tap each. */
export function CheckSkip(props: {
  catalogue: Catalogue;
  given: string | undefined;
  choose: (reason: string) => void;
}) {
  return (
    <section class="block" aria-label={words.skip}>
      <h2 class="block-title">{words.skip}</h2>
      <div class="choice-row skips">
        {props.catalogue.reasons.map((reason) => (
          <button
            key={reason.id}
            type="button"
            class="skip-reason"
            aria-pressed={props.given === reason.id}
            onClick={() => props.choose(reason.id)}
          >
            {reason.title}
          </button>
        ))}
      </div>
    </section>
  );
}
