import { useEffect, useRef } from "preact/hooks";
import type { Quantity } from "../generated/types.ts";
import { saveValue } from "../parts/save.ts";
import type { FindingView } from "../parts/use-listing.ts";

/** All that was measured at one check: one value of the records. */
export interface Measured {
  quantities: Record<string, Quantity>;
  words: Record<string, string>;
  maker?: Quantity | undefined;
}

const measuredOf = (finding: FindingView): Measured => ({
  quantities: finding.quantities,
  words: finding.words,
  ...(finding.maker ? { maker: finding.maker } : {}),
});

const isEmpty = (m: Measured) =>
  Object.keys(m.quantities).length === 0 && Object.keys(m.words).length === 0 && m.maker === undefined;

const plainQuantity = ({ n, unit }: Quantity) => ({ n, unit });

/** The value as it is stored. */
const plain = (m: Measured) => ({
  quantities: Object.fromEntries(Object.entries(m.quantities).map(([k, q]) => [k, plainQuantity(q)])),
  words: m.words,
  ...(m.maker ? { maker: plainQuantity(m.maker) } : {}),
});

/** The map less one entry. */
export function without<T>(map: Record<string, T>, name: string): Record<string, T> {
  return Object.fromEntries(Object.entries(map).filter(([key]) => key !== name));
}

/** Keeps what is measured, each part by itself; answers why not, if it could not. */
export interface Measuring {
  quantity: (name: string, value: Quantity | null) => Promise<string | undefined>;
  word: (name: string, value: string | null) => Promise<string | undefined>;
  maker: (value: Quantity | null) => Promise<string | undefined>;
  /** Told when the text of a field cannot be read, so that nothing older is judged in its place. */
  unread?: (name: string) => void;
}

/** Writes measured values; fields left at the same moment do not lose each other's entry. */
export function useMeasured(label: string, doc: string, check: string, finding: FindingView): Measuring {
  const latest = useRef(measuredOf(finding));
  const saving = useRef(0);
  useEffect(() => {
    if (saving.current === 0) latest.current = measuredOf(finding);
  }, [finding]);
  const put = async (next: Measured) => {
    latest.current = next;
    saving.current++;
    try {
      return await saveValue(label, doc, `finding/${check}/measured`, isEmpty(next) ? null : plain(next));
    } finally {
      saving.current--;
    }
  };
  return {
    quantity: (name, value) => {
      const { quantities } = latest.current;
      const next = value ? { ...quantities, [name]: value } : without(quantities, name);
      return put({ ...latest.current, quantities: next });
    },
    word: (name, value) => {
      const { words } = latest.current;
      const next = value ? { ...words, [name]: value } : without(words, name);
      return put({ ...latest.current, words: next });
    },
    maker: (value) => {
      const { quantities, words } = latest.current;
      return put({ quantities, words, ...(value ? { maker: value } : {}) });
    },
  };
}
