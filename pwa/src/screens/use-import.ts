import { useEffect, useRef, useState } from "preact/hooks";
import { type Added, addAbsent } from "../data/add.ts";
import { doc } from "../data/read.ts";
import { readComparables } from "../engine/engine.ts";
import type { Comparable, Import, ImportChoice, Rubric } from "../generated/types.ts";
import { importWords as words } from "../words/import.ts";
import { itemValue } from "./comparable-item.ts";

export interface ImportTask {
  /** How the engine read the table; the last good reading while a newer one fails. */
  found: Import | undefined;
  /** Of the table. */
  name: string;
  /** How many of its rows are kept already. */
  there: number;
  reading: boolean;
  problem: string | undefined;
  adding: { done: number; all: number } | undefined;
  done: Added | undefined;
  read: (table: Blob, name: string) => void;
  choose: (change: ImportChoice) => void;
  add: () => void;
}

interface Source {
  table: Blob;
  name: string;
  choice: ImportChoice;
}

interface Reading {
  found: Import;
  name: string;
  there: number;
}

const pathOf = (row: Comparable) => `item/${row.id}`;
const reason = (cause: unknown) => (cause instanceof Error ? cause.message : String(cause));

/** A table on its way to the comparables: read again after every choice, added when asked. */
export function useImport(kind: string, own?: Rubric): ImportTask {
  const [source, setSource] = useState<Source | undefined>(undefined);
  const [reading, setReading] = useState<Reading | undefined>(undefined);
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const [adding, setAdding] = useState<ImportTask["adding"]>(undefined);
  const [done, setDone] = useState<Added | undefined>(undefined);
  const alive = useRef(true);
  useEffect(
    () => () => {
      alive.current = false;
    },
    [],
  );

  useEffect(() => {
    if (!source || kind === "") return;
    let late = false;
    setBusy(true);
    const work = async () => {
      const found = await readComparables(kind, source.table, source.choice, own);
      const kept = (await doc("comparables")).values;
      return { found, name: source.name, there: found.rows.filter((row) => kept.has(pathOf(row))).length };
    };
    work().then(
      (next) => {
        if (late) return;
        setBusy(false);
        setProblem(undefined);
        setReading(next);
      },
      (cause: unknown) => {
        if (late) return;
        setBusy(false);
        setProblem(reason(cause));
      },
    );
    return () => {
      late = true;
    };
  }, [source, kind]);

  const read = (table: Blob, name: string) => {
    setReading(undefined);
    setDone(undefined);
    setProblem(undefined);
    setSource({ table, name, choice: {} });
  };
  const choose = (change: ImportChoice) => {
    setDone(undefined);
    if (source) setSource({ ...source, choice: { ...source.choice, ...change } });
  };
  const add = async () => {
    if (!reading) return;
    const { rows } = reading.found;
    const tell = (n: number) => alive.current && setAdding({ done: n, all: rows.length });
    let reached = 0;
    tell(0);
    try {
      const added = await addAbsent(
        words.label(rows.length - reading.there),
        rows.map((row) => ({ doc: "comparables", path: pathOf(row), value: itemValue({ ...row, kind }) })),
        (n) => {
          reached = n;
          tell(n);
        },
      );
      if (!alive.current) return;
      setProblem(undefined);
      setDone(added);
      setReading({ ...reading, there: rows.length });
    } catch (cause) {
      if (alive.current) setProblem(words.failed(reached, reason(cause)));
    }
    if (alive.current) setAdding(undefined);
  };
  return {
    found: reading?.found,
    name: reading?.name ?? "",
    there: reading?.there ?? 0,
    reading: busy,
    problem,
    adding,
    done,
    read,
    choose,
    add: () => void add(),
  };
}
