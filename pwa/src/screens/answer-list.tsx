import { answersOf } from "../data/links.ts";
import { SellerSays } from "../parts/seller-says.tsx";
import type { ListingDoc } from "../parts/use-listing.ts";
import { answerWords as words } from "../words/hand-over.ts";
import { answeredAt } from "./answered.ts";
import type { Lookup } from "./rubric-lookup.ts";

/** All that the seller answered, each with the way to its finding. */
export function AnswerList({ listing, lookup }: { listing: ListingDoc; lookup: Lookup }) {
  const answers = answersOf(listing.values);
  if (answers.length === 0) return null;
  return (
    <section class="block" id="answers" aria-label={words.title}>
      <h2 class="block-title">{words.title}</h2>
      <ul class="ruled">
        {answers.map((answer) => {
          const { title, href } = answeredAt(listing.id, answer.line, lookup);
          return (
            <li key={answer.path} class="answer-item">
              {href ? (
                <a class="row-link" href={href}>
                  <span class="row-main" dir="auto">
                    {title}
                  </span>
                </a>
              ) : (
                <b dir="auto">{title}</b>
              )}
              <SellerSays answers={[answer]} />
            </li>
          );
        })}
      </ul>
    </section>
  );
}
