import type { ComponentChildren } from "preact";
import { hourSpan, hours, plain } from "../charts/format.ts";
import type { Answer } from "../data/links.ts";
import type { Line, PartLine, WayChoice } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { showMoney } from "../parts/money.ts";
import { RangeInput } from "../parts/range-input.tsx";
import { saveValue } from "../parts/save.ts";
import { AnswerCount, SellerSays } from "../parts/seller-says.tsx";
import { estimateWords as words } from "../words/estimate.ts";
import { Amount, Amounts, rounded, roundedRange, showRange } from "./amounts.tsx";
import type { Lookup } from "./rubric-lookup.ts";

interface LineProps {
  id: string;
  line: Line;
  currency: string;
  lookup: Lookup;
}

/** One remedy or preparation, opening onto why, how, parts and hours. */
export function EstimateLine(props: LineProps & { answers: readonly Answer[] }) {
  const { line, currency, lookup, answers } = props;
  return (
    <Fold
      summary={
        <span dir="auto">
          {line.title}
          <span class="row-note figures">{words.hoursOf(hourSpan(line.hours.low, line.hours.high))}</span>
          {answers.length > 0 && <AnswerCount answers={answers} />}
        </span>
      }
      aside={rounded(line.mean, currency)}
    >
      <SellerSays answers={answers} />
      <Because {...props} />
      <Cautioned text={line.caution} />
      <Ways {...props} />
      <Parts parts={line.parts ?? []} currency={currency} lookup={lookup} />
      <Work line={line} currency={currency} lookup={lookup} />
    </Fold>
  );
}

/** The checks that ask for a remedy, or the remedies that need a preparation. */
export function Because({ id, line, lookup }: LineProps) {
  if (line.because.length === 0) return null;
  const preparation = line.kind === "preparation";
  return (
    <div>
      <h3 class="small-head">{preparation ? words.neededBy : words.because}</h3>
      <ul class="plain-list">
        {line.because.map((cause) => (
          <li key={cause} dir="auto">
            {preparation ? (
              (lookup.remedy(cause)?.title ?? cause)
            ) : (
              <a class="row-link" href={`/listing/${id}/walk/${cause}`}>
                <span class="row-main">{lookup.check(cause)?.title ?? cause}</span>
              </a>
            )}
          </li>
        ))}
      </ul>
    </div>
  );
}

function Cautioned({ text }: { text: string | undefined }): ComponentChildren {
  if (!text) return null;
  return (
    <p class="cautioned" dir="auto">
      <b>{words.caution}:</b> {text}
    </p>
  );
}

function Ways({ id, line, currency }: LineProps) {
  const ways = line.ways ?? [];
  if (ways.length === 0) return null;
  const about = (way: WayChoice) =>
    words.wayAside(
      words.wayKinds[way.kind] ?? way.kind,
      rounded(way.mean, currency),
      words.hoursOf(hourSpan(way.hours.low, way.hours.high)),
    );
  return (
    <fieldset class="field choice">
      <legend class="small-head">{words.way}</legend>
      <div class="choice-list">
        {ways.map((way) => (
          <label key={way.id} class="choice-item">
            <input
              type="radio"
              name={`way-${line.id}`}
              value={way.id}
              checked={line.way === way.id}
              onChange={() => void saveValue(words.setWay, `listing:${id}`, `way/${line.id}`, way.id)}
            />
            <span dir="auto">
              {way.title}
              <span class="row-note figures">{about(way)}</span>
            </span>
          </label>
        ))}
      </div>
      {ways.length > 1 && <p class="hint">{words.wayAlone}</p>}
    </fieldset>
  );
}

/** The parts of a line with their prices. */
export function Parts(props: { parts: PartLine[]; currency: string; lookup: Lookup }) {
  if (props.parts.length === 0) return null;
  return (
    <div>
      <h3 class="small-head">{words.parts}</h3>
      <p class="hint">{words.rangeHead}</p>
      {props.parts.map((part) => (
        <OnePart key={part.part} part={part} currency={props.currency} lookup={props.lookup} />
      ))}
    </div>
  );
}

/** A part with its price; opened, the user's own price for it. */
function OnePart({ part, currency, lookup }: { part: PartLine; currency: string; lookup: Lookup }) {
  const example = lookup.catalogue?.parts.find((p) => p.id === part.part)?.price;
  return (
    <Fold
      summary={
        <span dir="auto">
          {part.title}
          <span class="row-note figures">
            {words.quantity(plain(part.quantity), part.unit)} ·{" "}
            {part.own ? words.own : words.example(lookup.catalogue?.parts_dated ?? "")}
          </span>
        </span>
      }
      aside={showRange(part.price, currency)}
    >
      <RangeInput
        id={`book/${part.part}`}
        label={words.each(words.ownPrice, part.unit)}
        currency={currency}
        range={part.own ? part.price : undefined}
        example={example}
        hint={words.emptyIsExample}
        keep={(range) =>
          saveValue(words.setPart, "book", `part/${part.part}`, range === null ? null : { ...range })
        }
      />
    </Fold>
  );
}

/** Hours and their rate, machining, and the cost of the line. */
export function Work({ line, currency, lookup }: { line: Line; currency: string; lookup: Lookup }) {
  const worked = line.hours.high > 0;
  return (
    <Amounts>
      {worked && (
        <Amount
          name={words.work}
          note={
            <>
              {line.rate && line.per_hour !== undefined
                ? words.rate(lookup.trade(line.rate), showMoney(line.per_hour, currency))
                : ""}
              {line.minutes ? `, ${words.machining(hours(line.minutes))}` : ""}
            </>
          }
          value={`${hours(line.hours.low)} / ${hours(line.hours.likely)} / ${hours(line.hours.high)} h`}
        />
      )}
      <Amount name={words.cost} value={roundedRange(line.cost, currency)} why={`line:${line.id}`} strong />
    </Amounts>
  );
}
