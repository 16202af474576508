import { useId, useRef } from "preact/hooks";
import type { Link } from "../data/links.ts";
import { Labelled } from "../parts/field.tsx";
import { useHandOn } from "../parts/use-hand-on.ts";
import { linkWords as words } from "../words/hand-over.ts";

/** The address of a link: to copy, to hand on, to scan. */
export function LinkAddress({ link }: { link: Pick<Link, "url" | "qr" | "public"> }) {
  const dom = useId();
  const field = useRef<HTMLInputElement>(null);
  const mark = () => {
    field.current?.focus();
    field.current?.select();
  };
  const { said, copy, share } = useHandOn({ text: link.url, data: { url: link.url }, words, mark });
  return (
    <div class="block">
      {!link.public && <p class="field-problem">{words.notPublic}</p>}
      <Labelled label={words.address} for={dom}>
        <input id={dom} ref={field} type="text" readOnly class="stamped" value={link.url} />
      </Labelled>
      <div class="button-row">
        <button type="button" class="button" onClick={() => void copy()}>
          {words.copy}
        </button>
        {share && (
          <button type="button" class="button" onClick={() => void share()}>
            {words.share}
          </button>
        )}
      </div>
      <p role="status">{said}</p>
      {link.qr.length > 0 && <QrCode rows={link.qr} />}
    </div>
  );
}

/** Quiet zone around a QR code, modules (ISO/IEC 18004, 9.1; from memory). */
const QUIET = 4;

/** Always dark on white: a scanner may not read it the other way round. */
function QrCode({ rows }: { rows: readonly string[] }) {
  const side = rows.length + 2 * QUIET;
  const dark = rows
    .flatMap((row, y) =>
      [...row.matchAll(/1+/g)].map(
        (run) => `M${run.index + QUIET} ${y + QUIET}h${run[0].length}v1h-${run[0].length}z`,
      ),
    )
    .join("");
  return (
    <svg
      class="qr"
      viewBox={`0 0 ${side} ${side}`}
      role="img"
      aria-label={words.qrAlt}
      shape-rendering="crispEdges"
    >
      <rect width={side} height={side} fill="#fff" />
      <path d={dark} fill="#000" />
    </svg>
  );
}
