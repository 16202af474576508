import "../style/fit.css";
import "../style/money.css";
import "../style/walkaround.css";
import type { Fit, FitPoint, Result } from "../generated/types.ts";
import { fitWords as words } from "../words/fit.ts";
import { rounded } from "./amounts.tsx";
import { Cautions, FindingMark, PointFold } from "./fit-point.tsx";
import { JudgedPage } from "./judged-page.tsx";

/** The listing held against the buyer's shop, point by point. */
export function FitScreen({ id }: { id: string }) {
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
      {(result) => (result.fit ? <Points id={id} fit={result.fit} result={result} /> : <p>{words.none}</p>)}
    </JudgedPage>
  );
}

function Points({ id, fit, result }: { id: string; fit: Fit; result: Result }) {
  return (
    <>
      <section class="block fit-sum" aria-live="polite">
        <p>
          <FindingMark finding={fit.finding} words={words.findings} />
        </p>
        <p>{fit.sentence}</p>
      </section>
      <Cautions title={words.cautions} lines={fit.cautions} />
      <section class="block" aria-label={words.points}>
        <h2 class="block-title">{words.points}</h2>
        {fit.points.map((point) => (
          <PointFold
            key={point.id}
            point={point}
            findings={words.findings}
            missing={words.missing}
            figure={words.figure}
            listing={id}
          >
            <Brought id={id} point={point} result={result} />
          </PointFold>
        ))}
      </section>
    </>
  );
}

/** The landing line that a point brings, with what it costs. */
function Brought({ id, point, result }: { id: string; point: FitPoint; result: Result }) {
  const line = result.landing.lines.find((l) => l.id === point.landing);
  if (!line) return null;
  return (
    <div>
      <h3 class="small-head">{words.landing}</h3>
      <a class="row-link" href={`/listing/${id}/estimate`}>
        <span class="row-main" dir="auto">
          {line.title}
          {line.says && <span class="row-note">{line.says}</span>}
        </span>
        <span class="row-aside figures">{rounded(line.mean, result.currency)}</span>
      </a>
    </div>
  );
}
