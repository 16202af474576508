import "../style/document.css";
import type {
  Document,
  DocumentAnswerWords,
  DocumentBlock,
  DocumentColumn,
  DocumentPhoto,
  DocumentRow,
  DocumentTable,
} from "../generated/types.ts";
import { Hazard } from "./hazard.tsx";

/** A picture of the document as it can be shown. */
export interface ShownPhoto {
  url: string;
  width: number;
  height: number;
}

interface Around {
  photo: (key: string) => ShownPhoto | undefined;
  answers: DocumentAnswerWords | undefined;
  /** What is said in place of a photo that is not there. */
  absent: string | undefined;
}

/** A document as its reader gets it, on the screen and on paper; every text of it is the document's own. */
export function DocumentView(props: { document: Document; photo: (key: string) => ShownPhoto | undefined }) {
  const { document: paper, photo } = props;
  const around = { photo, answers: paper.answers, absent: paper.absent };
  return (
    <article class="paper" lang={paper.language} aria-labelledby="paper-title">
      <header class="paper-head">
        <h2 id="paper-title" class="paper-title" dir="auto">
          {paper.title}
        </h2>
        <p class="paper-date">{paper.date}</p>
      </header>
      <Blocks blocks={paper.blocks} around={around} />
      <footer class="paper-foot" dir="auto">
        {paper.foot}
      </footer>
    </article>
  );
}

function Blocks({ blocks, around }: { blocks: DocumentBlock[]; around: Around }) {
  return (
    <>
      {blocks.map((block, i) => (
        // Blocks have no names of their own; a document is shown anew as a whole.
        <Piece key={i} block={block} around={around} />
      ))}
    </>
  );
}

function Piece({ block, around }: { block: DocumentBlock; around: Around }) {
  const text = block.text ?? "";
  switch (block.kind) {
    case "heading":
      return <Heading level={block.level ?? 1} text={text} />;
    case "text":
      return (
        <p class={block.tone ? `paper-text paper-${block.tone}` : "paper-text"} dir="auto">
          {text}
        </p>
      );
    case "facts":
      return (
        <dl class="paper-facts">
          {(block.facts ?? []).map((fact) => (
            <div key={fact.name}>
              <dt dir="auto">{fact.name}</dt>
              <dd dir="auto">{fact.value}</dd>
            </div>
          ))}
        </dl>
      );
    case "list":
      return (
        <ul class="paper-list">
          {(block.items ?? []).map((item) => (
            <li key={item} dir="auto">
              {item}
            </li>
          ))}
        </ul>
      );
    case "table":
      return block.table ? <Table table={block.table} /> : null;
    case "caution":
      return (
        <div class={`paper-caution paper-caution-${block.signal ?? "notice"}`}>
          <Hazard word={block.signal ?? "notice"} said={block.word} small />
          <p dir="auto">{text}</p>
        </div>
      );
    case "photos":
      return <Photos photos={block.photos ?? []} around={around} />;
    case "part":
      return (
        <section class="paper-part">
          <Blocks blocks={block.blocks ?? []} around={around} />
          {block.answer && around.answers && <AnswerLine words={around.answers} />}
        </section>
      );
    default:
      return null;
  }
}

/** The paper's title is the first of its headings, and the second of the screen's. */
function Heading({ level, text }: { level: number; text: string }) {
  if (level <= 1) return <h2 dir="auto">{text}</h2>;
  if (level === 2) return <h3 dir="auto">{text}</h3>;
  return <h4 dir="auto">{text}</h4>;
}

function Table({ table }: { table: DocumentTable }) {
  return (
    <table class={`paper-table paper-table-${table.columns.length}`} aria-label={table.title}>
      <colgroup>
        {table.columns.map((column) => (
          <col key={column.title} style={{ width: `${column.share}%` }} />
        ))}
      </colgroup>
      <thead>
        <tr>
          {table.columns.map((column) => (
            <th key={column.title} scope="col" class={column.right ? "paper-right" : ""}>
              {column.title}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {table.rows.map((row, i) => (
          <Row key={i} row={row} columns={table.columns} />
        ))}
      </tbody>
    </table>
  );
}

function Row({ row, columns }: { row: DocumentRow; columns: DocumentColumn[] }) {
  if (row.kind === "group") {
    return (
      <tr class="paper-group">
        <th colSpan={columns.length} scope="colgroup" dir="auto">
          {row.cells[0]}
        </th>
      </tr>
    );
  }
  return (
    <tr class={row.kind === "total" ? "paper-total" : ""}>
      {columns.map((column, i) => {
        const cell = row.cells[i] ?? "";
        return (
          <td
            key={column.title}
            class={`${column.right ? "paper-right" : ""}${cell === "" ? " paper-blank" : ""}`}
            // Beside the value where the table is too narrow for columns.
            data-name={i === 0 ? "" : column.title}
          >
            <span dir="auto">{cell}</span>
          </td>
        );
      })}
    </tr>
  );
}

function Photos({ photos, around }: { photos: DocumentPhoto[]; around: Around }) {
  return (
    <div class="paper-photos">
      {photos.map((photo, i) => {
        const second = i > 0 && photos[i - 1]?.pair === true;
        const name = photo.pair ? "paper-pair-first" : second ? "paper-pair-second" : "";
        return (
          <figure key={photo.key} class={`paper-photo ${name}`}>
            <Picture
              photo={photo}
              shown={photo.missing ? undefined : around.photo(photo.key)}
              absent={around.absent}
            />
            <figcaption dir="auto">{photo.caption}</figcaption>
          </figure>
        );
      })}
    </div>
  );
}

/** The picture; an empty frame while it is copied, and one that says so where it is not on this device. */
function Picture(props: { photo: DocumentPhoto; shown: ShownPhoto | undefined; absent: string | undefined }) {
  const { photo, shown } = props;
  if (photo.missing) return <p class="paper-gap paper-missing">{props.absent}</p>;
  if (!shown) return <div class="paper-gap" aria-hidden="true" />;
  return <img src={shown.url} width={shown.width} height={shown.height} alt={photo.caption} />;
}

/** Where the seller can answer on the page behind the link; not on paper. */
function AnswerLine({ words }: { words: DocumentAnswerWords }) {
  return (
    <p class="paper-answers">
      {[words.agree, words.disagree, words.done].map((word) => (
        <span key={word}>{word}</span>
      ))}
    </p>
  );
}
