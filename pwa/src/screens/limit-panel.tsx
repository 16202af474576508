import type { LimitFigure, LimitResult } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { checkWords as words } from "../words/walkaround.ts";
import type { LimitView } from "./use-limit.ts";

/** A computed figure for reading: four significant digits, never in powers of ten. */
function figure(n: number, unit: string): string {
  const digits = new Intl.NumberFormat(undefined, { maximumSignificantDigits: 4 }).format(n);
  return unit === "" ? digits : `${digits} ${unit}`;
}

const figureText = (f: LimitFigure) =>
  f.text && f.text !== "" ? f.text : f.value === undefined ? "" : figure(f.value, f.unit ?? "");

/** The measured value held against its limit. `named`: a field already carries the problem. */
export function LimitPanel({ view, named }: { view: LimitView; named: boolean }) {
  const { result, problem } = view;
  if (problem !== undefined) {
    return named ? null : (
      <p class="field-problem" role="alert">
        {problem}
      </p>
    );
  }
  if (!result) return <p class="quiet">{words.notEntered}</p>;
  return (
    <div class={`limit limit-${result.finding.split(" ")[0] ?? ""}`} aria-live="polite">
      <p class="limit-finding">{result.finding}</p>
      <p>{result.text}</p>
      <LimitFigures result={result} />
    </div>
  );
}

/** The figures of a limit with its caution, opening onto where they come from. */
export function LimitFigures({ result }: { result: LimitResult }) {
  return (
    <>
      <dl class="pairs figures">
        <dt>{words.value}</dt>
        <dd class="stamped">{figure(result.value, result.unit)}</dd>
        <dt>{words.limit}</dt>
        <dd class="stamped">{result.limit === null ? words.noLimit : figure(result.limit, result.unit)}</dd>
        {result.more?.map((f) => (
          <FigureRow key={f.title} title={f.title} text={figureText(f)} />
        ))}
      </dl>
      {result.caution && <p class="limit-caution">{result.caution}</p>}
      <Fold summary={words.source}>
        <p>{result.source}</p>
        <p>
          {words.standing}: {result.status}
        </p>
        <p>
          {words.formula}: {result.formula}
        </p>
        {result.notes?.map((note) => (
          <p key={note}>{note}</p>
        ))}
      </Fold>
    </>
  );
}

function FigureRow({ title, text }: { title: string; text: string }) {
  return (
    <>
      <dt>{title}</dt>
      <dd class="stamped">{text}</dd>
    </>
  );
}
