import "../style/bench.css";
import { FindingMark } from "../charts/finding-mark.tsx";
import { LimitScale } from "../charts/limit-scale.tsx";
import type { LimitFigure, LimitResult } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { useCatalogue } from "../parts/use-catalogue.ts";
import { groupWords, standingWords, limitWords as words } from "../words/bench.ts";
import { showRange } from "./amounts.tsx";
import { type FigureGroup, figure, figureText, grouped, titleIn } from "./figure-text.ts";
import type { LimitView } from "./use-limit.ts";
import { type PartPrice, usePartPrice } from "./use-part-price.ts";

/**
 * The measured value held against its limit. `named`: a field already carries the
 * problem. `said`: a caution that stands before the fields and is not said twice.
 */
export function LimitPanel(props: PanelProps) {
  const { result } = props.view;
  return (
    <>
      <p class="seen-by-reader" role="status">
        {result && `${result.finding}: ${result.text}`}
      </p>
      <Panel {...props} />
    </>
  );
}

interface PanelProps {
  view: LimitView;
  named: boolean;
  said?: string | undefined;
  /** Said instead of a result that is not there yet. */
  wait?: string;
}

function Panel(props: PanelProps) {
  const { result, problem } = props.view;
  if (problem !== undefined) {
    return props.named ? null : (
      <p class="field-problem" role="alert">
        {problem}
      </p>
    );
  }
  if (!result) return <p class="quiet">{props.wait ?? words.notEntered}</p>;
  const { finding } = result;
  return (
    <section class={`limit limit-${finding.split(" ")[0] ?? ""}`} aria-label={words.result}>
      <p class="limit-finding">
        <FindingMark finding={finding} />
        {finding}
      </p>
      <p>{result.text}</p>
      <LimitFigures result={result} said={props.said} />
    </section>
  );
}

/** What stands behind a finding: value against limit, standing of the figure, caution, figures and source. */
export function LimitFigures({ result, said }: { result: LimitResult; said?: string | undefined }) {
  const { caution } = result;
  return (
    <>
      {result.limit !== null && <Scale result={result} limit={result.limit} />}
      <Standing result={result} />
      {caution && caution !== said && <p class="limit-caution">{caution}</p>}
      <Figures result={result} />
      {result.notes?.map((note) => (
        <p key={note}>{note}</p>
      ))}
      <p class="quiet">
        {words.source}: {result.source}
      </p>
      <Fold summary={words.how}>
        <p class="limit-formula">{result.formula}</p>
      </Fold>
    </>
  );
}

function Scale({ result, limit }: { result: LimitResult; limit: number }) {
  const [value, at] = [figure(result.value, result.unit), figure(limit, result.unit)];
  return (
    <LimitScale
      value={result.value}
      limit={limit}
      finding={result.finding}
      label={words.scale(value, at)}
      valueText={words.valueIs(value)}
      limitText={words.limitIs(at)}
    />
  );
}

/** How well the figure is founded, as a stamp of its own kind of rim. */
function Standing({ result }: { result: LimitResult }) {
  const kind = result.status.replace(/[^a-z]+/g, "-");
  const title = useCatalogue()?.standings.find((s) => s.id === result.status)?.title ?? result.status;
  return (
    <p>
      <b class={`standing-stamp standing-${kind}`}>{title}</b> {standingWords[result.status]}
    </p>
  );
}

/** The value where no scale shows it, and further figures; those that belong together under their heading. */
function Figures({ result }: { result: LimitResult }) {
  const priceOf = usePartPrice();
  const groups = grouped(result.more ?? []);
  const first = groups[0]?.group === "" ? groups.shift() : undefined;
  return (
    <>
      {(result.limit === null || first) && (
        <dl class="pairs figures">
          {result.limit === null && (
            <>
              <dt>{words.value}</dt>
              <dd class="stamped">{figure(result.value, result.unit)}</dd>
            </>
          )}
          <Pairs figures={first?.figures ?? []} />
        </dl>
      )}
      {groups.map((g) =>
        g.group === "" ? (
          <section key={g.group} class="limit-group">
            <h3>{words.further}</h3>
            <dl class="pairs figures">
              <Pairs figures={g.figures} />
            </dl>
          </section>
        ) : (
          <Group key={g.group} group={g} priceOf={priceOf} />
        ),
      )}
    </>
  );
}

function Pairs({ figures }: { figures: LimitFigure[] }) {
  return (
    <>
      {figures.map((f) => (
        <FigureRow key={f.title} figure={f} />
      ))}
    </>
  );
}

function FigureRow({ figure: f }: { figure: LimitFigure }) {
  return (
    <>
      <dt>{f.title}</dt>
      <dd class={f.text ? "" : "stamped"}>{figureText(f)}</dd>
    </>
  );
}

/** Figures in their rank, each with its words and what it costs. */
function Group(props: { group: FigureGroup; priceOf: (id: string) => PartPrice | undefined }) {
  const { group, figures } = props.group;
  return (
    <section class="limit-group">
      <h3>{groupWords[group] ?? group}</h3>
      <ol class="limit-ranks">
        {figures.map((f) => (
          <li key={f.title}>
            <b class="limit-rank">{titleIn(group, f.title)}</b>
            <span>{figureText(f)}</span>
            {f.part && <Price price={props.priceOf(f.part)} />}
          </li>
        ))}
      </ol>
    </section>
  );
}

function Price({ price }: { price: PartPrice | undefined }) {
  if (!price) return null;
  return (
    <span class="limit-price figures">
      {price.title}: <b>{words.price(showRange(price.price, price.currency), price.unit)}</b>{" "}
      <span class="row-note">{price.own ? words.ownPrice : words.examplePrice(price.dated)}</span>
    </span>
  );
}
