import { CareBar } from "../charts/care-bar.tsx";
import { percent } from "../charts/format.ts";
import type { Doubt, Hidden, Result } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import type { ListingDoc } from "../parts/use-listing.ts";
import { Why } from "../parts/why.tsx";
import { resultScreenWords as words } from "../words/result.ts";
import { rounded } from "./amounts.tsx";
import { OwnBelief } from "./own-belief.tsx";

/** How it was kept, as the findings tell, and what the unseen is priced at by that. */
export function HiddenDefects({ result, listing }: { result: Result; listing: ListingDoc }) {
  const { hidden, currency } = result;
  const points = [...hidden.points].sort((a, b) => b.mean - a.mean);
  return (
    <section class="block">
      <h2 class="block-title">{words.care}</h2>
      <CareClasses hidden={hidden} />
      <Why of="care" short />
      <p>{hidden.sentence}</p>
      <Why of="hidden" />
      {points.length > 0 && (
        <Fold summary={words.hidden} aside={rounded(hidden.mean, currency)}>
          <p class="hint">{words.hiddenHigh(rounded(hidden.high, currency))}</p>
          <DoubtList id={listing.id} points={points} currency={currency} />
        </Fold>
      )}
      <Fold summary={words.belief} aside={listing.values.has("care") ? words.beliefOwn : undefined}>
        <OwnBelief listing={listing} prior={hidden.prior} />
      </Fold>
    </section>
  );
}

/** The three classes of keeping, each as notches with its chance now and before looking. */
function CareClasses({ hidden }: { hidden: Hidden }) {
  return (
    <div>
      <p class="hint">{words.careKey}</p>
      <ul class="care-classes">
        {words.careClasses.map((name, i) => {
          const [share, before] = [(hidden.care[i] ?? 0) / 10_000, (hidden.prior[i] ?? 0) / 10_000];
          return (
            <li key={name}>
              <p class="care-head">
                <b>{name}</b> <b class="figures">{percent(share)}</b>
                <span class="faint figures">{words.careBefore(percent(before))}</span>
              </p>
              <CareBar share={share} before={before} />
            </li>
          );
        })}
      </ul>
    </div>
  );
}

function DoubtList({ id, points, currency }: { id: string; points: Doubt[]; currency: string }) {
  return (
    <ul class="plain-list">
      {points.map((point) => (
        <li key={point.check}>
          <a class="row-link" href={`/listing/${id}/walk/${point.check}`}>
            <span class="row-main" dir="auto">
              {point.title}
              <span class="row-note">{words.chance(percent(point.chance))}</span>
            </span>
            <span class="row-aside figures">{rounded(point.mean, currency)}</span>
          </a>
        </li>
      ))}
    </ul>
  );
}
