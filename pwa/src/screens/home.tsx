import "../style/fit.css";
import "../style/money.css";
import "../style/walkaround.css";
import type { Home, HomeGear, HomePiece, Result } from "../generated/types.ts";
import { Fold } from "../parts/fold.tsx";
import { useListing } from "../parts/use-listing.ts";
import { fitWords } from "../words/fit.ts";
import { homeWords as words } from "../words/home.ts";
import { rounded } from "./amounts.tsx";
import { Cautions, FindingMark, PointFold } from "./fit-point.tsx";
import { JudgedPage } from "./judged-page.tsx";
import { type Lookup, useLookup } from "./rubric-lookup.ts";

/** The plan for getting it home: cautions, pieces, what must be right on the road, gear and steps. */
export function HomeScreen({ id }: { id: string }) {
  const lookup = useLookup(useListing(id)?.values.get("rubric"));
  const actions = (
    <>
      <a class="button" href={`/listing/${id}/estimate`}>
        {words.toEstimate}
      </a>
      <a class="button button-main" href="/shop">
        {words.toShop}
      </a>
    </>
  );
  return (
    <JudgedPage id={id} title={words.title} back={`/listing/${id}`} backTitle={words.back} actions={actions}>
      {(result) =>
        result.home ? (
          <Plan id={id} home={result.home} result={result} lookup={lookup} />
        ) : (
          <p>{words.none}</p>
        )
      }
    </JudgedPage>
  );
}

function Plan(props: { id: string; home: Home; result: Result; lookup: Lookup }) {
  const { home } = props;
  return (
    <>
      <Cautions title={words.cautions} lines={home.cautions} />
      <section class="block fit-sum" aria-live="polite">
        <p>
          <FindingMark finding={home.finding} words={words.asides} />
        </p>
        <p>{home.sentence}</p>
      </section>
      <section class="block" aria-label={words.pieces}>
        <h2 class="block-title">{words.pieces}</h2>
        {home.pieces.map((piece) => (
          <Piece key={piece.id} piece={piece} />
        ))}
      </section>
      <section class="block" aria-label={words.points}>
        <h2 class="block-title">{words.points}</h2>
        {home.points.map((point) => (
          <PointFold
            key={point.id}
            point={point}
            findings={words.findings}
            missing={words.missing}
            figure={fitWords.figure}
            listing={props.id}
          />
        ))}
      </section>
      <Gear gear={home.gear} />
      <section class="block" aria-label={words.steps}>
        <h2 class="block-title">{words.steps}</h2>
        <ol class="numbered">
          {home.steps.map((step) => (
            <li key={step} dir="auto">
              {step}
            </li>
          ))}
        </ol>
      </section>
      <Costs {...props} />
    </>
  );
}

function Piece({ piece }: { piece: HomePiece }) {
  return (
    <Fold
      summary={
        <span dir="auto">
          {words.pieceOf(piece.count, piece.title)}
          <span class="row-note figures">{piece.size}</span>
        </span>
      }
      aside={piece.top_heavy ? words.topHeavy : undefined}
    >
      <h3 class="small-head">{words.handling}</h3>
      <p dir="auto">{piece.handling}</p>
    </Fold>
  );
}

function Gear({ gear }: { gear: HomeGear[] }) {
  return (
    <section class="block" aria-label={words.gear}>
      <h2 class="block-title">{words.gear}</h2>
      <ul class="plain-list">
        {gear.map((item) => (
          <li key={`${item.title} ${item.own}`} class="gear-row">
            <b>{words.gearOf(item.count, item.title)}</b>
            <span class="quiet">{item.own ? words.own : words.hired}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The landing lines that the plan computes. */
function Costs({ id, result, lookup }: { id: string; result: Result; lookup: Lookup }) {
  const planned = new Set(lookup.rubric?.landing.filter((l) => l.haul).map((l) => l.id));
  const lines = result.landing.lines.filter((l) => planned.has(l.id));
  if (lines.length === 0) return null;
  return (
    <section class="block" aria-label={words.costs}>
      <h2 class="block-title">{words.costs}</h2>
      <ul class="plain-list">
        {lines.map((line) => (
          <li key={line.id}>
            <a class="row-link" href={`/listing/${id}/estimate`}>
              <span class="row-main" dir="auto">
                {line.title}
                {line.says && <span class="row-note">{line.says}</span>}
              </span>
              <span class="row-aside figures">{rounded(line.mean, result.currency)}</span>
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}
