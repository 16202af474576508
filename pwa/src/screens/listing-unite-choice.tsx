import { useId } from "preact/hooks";
import { stampMs } from "../data/clock.ts";
import { isRecord } from "../data/shape.ts";
import type { Difference, Side, ToldRows } from "../data/unite.ts";
import type { Json } from "../data/value.ts";
import type { Catalogue, Rubric } from "../generated/types.ts";
import { locale as spoken } from "../words/tongue.ts";
import { uniteWords as words } from "../words/unite.ts";
import { pathTitle, valueText } from "./value-words.ts";

interface Known {
  catalogue: Catalogue;
  rubric: Rubric | undefined;
  currency: string;
}

/** One thing both records tell differently: what each says, when it was entered, and which is kept. */
export function DifferenceChoice(props: {
  difference: Difference;
  told: { mine: ToldRows; theirs: ToldRows };
  known: Known;
  side: Side;
  choose: (side: Side) => void;
}) {
  const { difference, told, side } = props;
  const name = useId();
  const offered: { side: Side; title: string; text: string; when: string }[] = [
    {
      side: "mine",
      title: words.mine,
      text: textOf(difference.mine, props.known),
      when: whenOf(difference.mine, told.mine),
    },
    {
      side: "theirs",
      title: words.theirs,
      text: textOf(difference.theirs, props.known),
      when: whenOf(difference.theirs, told.theirs),
    },
  ];
  if (difference.joins) offered.push({ side: "both", title: words.both, text: "", when: "" });
  return (
    <fieldset class="field choice">
      <legend class="field-label" dir="auto">
        {pathTitle(difference.key, props.known.rubric)}
      </legend>
      <div class="choice-list">
        {offered.map((one) => (
          <label key={one.side} class="choice-item">
            <input
              type="radio"
              name={name}
              checked={side === one.side}
              onChange={() => props.choose(one.side)}
            />
            <span dir="auto">
              {one.text || one.title}
              <span class="row-note">
                {one.text && one.title}
                {one.when && ` · ${one.when}`}
              </span>
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

/** A note may be pages long; it is told by its beginning. */
const MOST = 280;

function textOf(values: ReadonlyMap<string, Json>, known: Known): string {
  return [...values]
    .filter(([, value]) => value !== null)
    .map(([path, value]) => {
      if (path === "rubric" && isRecord(value) && typeof value.version === "number")
        return words.kindVersion(valueText(path, value, known), value.version);
      const letters = [...valueText(path, value, known)];
      return letters.length > MOST ? `${letters.slice(0, MOST).join("")}…` : letters.join("");
    })
    .join(" · ");
}

function whenOf(values: ReadonlyMap<string, Json>, told: ToldRows): string {
  const times = [...values.keys()].flatMap((path) => told.get(path)?.stamp ?? []).map(stampMs);
  return times.length === 0 ? "" : shortTime(Math.max(...times));
}

const shortTime = (ms: number) =>
  new Date(ms).toLocaleString(spoken(), { dateStyle: "medium", timeStyle: "short" });
