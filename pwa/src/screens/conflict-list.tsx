import { useState } from "preact/hooks";
import type { Conflict, Version } from "../data/read.ts";
import { bringBack, settle } from "../data/write.ts";
import type { Rubric } from "../generated/types.ts";
import { useCatalogue } from "../parts/use-catalogue.ts";
import { conflictWords as words } from "../words/listing.ts";
import { locale as spoken } from "../words/tongue.ts";
import { pathTitle, valueText } from "./value-words.ts";

/** Fields entered on two devices at once: what is used, what else there is, and the choice. */
export function ConflictList(props: { conflicts: Conflict[]; rubric: Rubric | undefined; currency: string }) {
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const catalogue = useCatalogue();
  const known = { catalogue, rubric: props.rubric, currency: props.currency };
  if (props.conflicts.length === 0) return null;
  const decide = (act: Promise<void>) => {
    setProblem(undefined);
    act.catch((cause: unknown) => setProblem(cause instanceof Error ? cause.message : String(cause)));
  };
  return (
    <section class="banner banner-note conflicts">
      <h2>{words.title(props.conflicts.length)}</h2>
      <p>{words.lead}</p>
      {problem && (
        <p class="field-problem" role="alert">
          {problem}
        </p>
      )}
      {props.conflicts.map((c) => (
        <div key={c.path} class="conflict">
          <h3>{pathTitle(c.path, props.rubric)}</h3>
          <Entry title={words.now} version={c.winner} text={valueText(c.path, c.winner.value, known)}>
            <button type="button" class="button" onClick={() => decide(settle(c.doc, c.path))}>
              {words.keep}
            </button>
          </Entry>
          {c.losers.map((loser) => (
            <Entry
              key={loser.stamp}
              title={words.also}
              version={loser}
              text={valueText(c.path, loser.value, known)}
            >
              <button
                type="button"
                class="button"
                onClick={() => decide(bringBack(c.doc, c.path, loser.stamp))}
              >
                {words.use}
              </button>
            </Entry>
          ))}
        </div>
      ))}
    </section>
  );
}

function Entry(props: { title: string; version: Version; text: string; children: preact.ComponentChildren }) {
  const when = new Date(props.version.at).toLocaleString(spoken(), {
    dateStyle: "medium",
    timeStyle: "short",
  });
  return (
    <div class="conflict-entry">
      <div>
        <p class="quiet">
          {props.title} {props.version.own ? words.here : words.elsewhere}, {when}
        </p>
        <p dir="auto">
          <b>{props.text}</b>
        </p>
      </div>
      {props.children}
    </div>
  );
}
