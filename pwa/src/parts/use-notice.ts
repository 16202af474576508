import { useEffect, useState } from "preact/hooks";
import { readNotice } from "../engine/engine.ts";
import type { Proposal, Rubric, Shop } from "../generated/types.ts";

/** What a text was last read for. */
export interface Noticed {
  /** The text that the proposals are of. */
  text: string;
  proposals: Proposal[];
  problem?: string;
}

/** Typing may pause this long before the text is read, ms. */
const pause = 250;

/** What a listing's text tells, read again when the text changes. `rubric` is its kind where that is known. */
export function useNotice(
  text: string,
  shop: Shop | undefined,
  about: { rubric?: string | undefined; own: Rubric[]; date: string },
): Noticed | undefined {
  const [noticed, setNoticed] = useState<Noticed | undefined>(undefined);
  const { rubric, own, date } = about;
  useEffect(() => {
    if (!shop) return;
    if (text.trim() === "") {
      setNoticed(undefined);
      return;
    }
    let late = false;
    const tell = (next: Noticed) => {
      if (!late) setNoticed(next);
    };
    const { currency, units } = shop;
    const ask = () =>
      readNotice({ text, currency, units, date, own, ...(rubric ? { rubric } : {}) }).then(
        ({ proposals }) => tell({ text, proposals }),
        (cause: unknown) =>
          tell({ text, proposals: [], problem: cause instanceof Error ? cause.message : String(cause) }),
      );
    const timer = setTimeout(() => void ask(), pause);
    return () => {
      late = true;
      clearTimeout(timer);
    };
  }, [text, shop?.currency, shop?.units, rubric, own, date]);
  return noticed;
}
