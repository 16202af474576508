import { plain } from "../charts/format.ts";
import { mostLost } from "../data/file-worth.ts";
import { integerOf, numberOf, textOf } from "../data/shape.ts";
import { NumberField, TextField } from "../parts/field.tsx";
import { Fold } from "../parts/fold.tsx";
import type { ListingDoc } from "../parts/use-listing.ts";
import { useMembers } from "../parts/use-members.ts";
import { worthWords as words } from "../words/worth.ts";
import { SharePercentField } from "./percent-field.tsx";

/** Worth lost by more than age, each with its reason. */
export function LostFold({ listing }: { listing: ListingDoc }) {
  const some = ["functional", "economic", "output"].some((part) => listing.values.has(`lost/${part}`));
  return (
    <Fold summary={words.lost} aside={some ? undefined : words.lostNone}>
      <p class="hint">{words.lostHint}</p>
      <Share listing={listing} part="functional" label={words.functional} hint={words.functionalHint} />
      <Share listing={listing} part="economic" label={words.economic} hint={words.economicHint} />
      <Output listing={listing} />
    </Fold>
  );
}

function Share(props: { listing: ListingDoc; part: "functional" | "economic"; label: string; hint: string }) {
  const path = `lost/${props.part}`;
  const { members, keep } = useMembers(props.listing, path, words.setLost);
  const [points, why] = [integerOf(members.points), textOf(members.why) ?? ""];
  const id = `${props.listing.doc}/${path}`;
  return (
    <>
      <SharePercentField
        id={id}
        label={props.label}
        hint={props.hint}
        points={points}
        low={0}
        high={mostLost / 100}
        keep={(p) => keep({ points: p })}
      />
      {(points !== undefined || why !== "") && (
        <TextField
          id={`${id}-why`}
          label={words.why}
          value={why}
          lines={2}
          most={2000}
          keep={(text) => keep({ why: text.trim() })}
        />
      )}
    </>
  );
}

function Output({ listing }: { listing: ListingDoc }) {
  const { members, keep } = useMembers(listing, "lost/output", words.setLost);
  const [used, rated] = [numberOf(members.used), numberOf(members.rated)];
  const id = `${listing.doc}/lost/output`;
  const half = (used === undefined) !== (rated === undefined);
  return (
    <fieldset class="field block">
      <legend class="field-label">{words.output}</legend>
      <p class="field-hint">{words.outputHint}</p>
      <div class="field-row">
        <NumberField
          id={`${id}-used`}
          label={words.outputUsed}
          value={used}
          low={0.0001}
          high={1e9}
          keep={(n) =>
            keep((now) => {
              const most = numberOf(now.rated);
              return n !== null && most !== undefined && n > most
                ? words.outputMore(plain(most))
                : { used: n };
            })
          }
        />
        <NumberField
          id={`${id}-rated`}
          label={words.outputRated}
          value={rated}
          low={0.0001}
          high={1e9}
          keep={(n) =>
            keep((now) => {
              const least = numberOf(now.used);
              return n !== null && least !== undefined && n < least
                ? words.outputLess(plain(least))
                : { rated: n };
            })
          }
        />
      </div>
      <p class="hint">{half ? words.outputHalf : words.outputUnit}</p>
    </fieldset>
  );
}
