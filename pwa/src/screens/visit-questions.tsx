import type { VisitPlan, VisitQuestion } from "../generated/types.ts";
import { TextField } from "../parts/field.tsx";
import { Fold } from "../parts/fold.tsx";
import { save, saveValue } from "../parts/save.ts";
import type { ListingDoc } from "../parts/use-listing.ts";
import { visitWords as words } from "../words/visit.ts";
import { VisitMessage } from "./visit-message.tsx";

/** The questions for the seller: as one message, and each to tick off with its answer. */
export function VisitQuestions({ listing, plan }: { listing: ListingDoc; plan: VisitPlan }) {
  const told = plan.questions.filter((q) => q.told !== undefined && !q.asked);
  const open = plan.questions.filter((q) => !told.includes(q));
  return (
    <section class="block" aria-label={words.questions}>
      <h2 class="block-title">{words.questions}</h2>
      {plan.questions.length === 0 ? (
        <p>{words.noQuestions}</p>
      ) : plan.message === "" ? (
        <p>{words.allAsked}</p>
      ) : (
        <VisitMessage text={plan.message} />
      )}
      {open.length > 0 && (
        <ul class="ruled">
          {open.map((q) => (
            <Question key={q.id} listing={listing} question={q} />
          ))}
        </ul>
      )}
      {told.length > 0 && (
        <Fold summary={words.told(told.length)}>
          <ul class="ruled">
            {told.map((q) => (
              <li key={q.id}>
                {q.ask}
                <span class="row-note" dir="auto">
                  {q.told}
                </span>
              </li>
            ))}
          </ul>
        </Fold>
      )}
    </section>
  );
}

function Question({ listing, question }: { listing: ListingDoc; question: VisitQuestion }) {
  const path = `asked/${question.id}`;
  const label = words.askedLabel(question.ask);
  const tick = (asked: boolean) =>
    void save(label, [{ doc: listing.doc, path, value: asked ? (question.answer ?? "") : null }]);
  return (
    <li>
      <label class="choice-item">
        <input type="checkbox" checked={question.asked} onChange={(e) => tick(e.currentTarget.checked)} />
        <span>
          {question.ask}
          {question.why && <span class="row-note">{words.why(question.why)}</span>}
        </span>
      </label>
      {question.asked && (
        <TextField
          id={`${listing.doc}/${path}`}
          label={words.answer}
          value={question.answer ?? ""}
          most={2000}
          keep={(text) => saveValue(label, listing.doc, path, text)}
        />
      )}
    </li>
  );
}
