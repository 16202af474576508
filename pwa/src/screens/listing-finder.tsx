import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import { STANDS } from "../data/stand.ts";
import { Labelled } from "../parts/field.tsx";
import { type Ask, type Found, SORTS } from "../parts/find-listings.ts";
import type { ShopCatalogue } from "../parts/use-catalogue.ts";
import { findWords as words } from "../words/find.ts";
import { locale as spoken } from "../words/tongue.ts";
import { FindField } from "./find-field.tsx";

const names = new Intl.Collator(spoken(), { numeric: true });

/** Search, filters and order of the list, low on the screen. */
export function Finder(props: {
  ask: Ask;
  found: Found;
  catalogue: ShopCatalogue | undefined;
  change: (part: Partial<Ask>) => void;
}) {
  const { ask, found, catalogue, change } = props;
  const kinds = [...found.kinds]
    .map(([id, n]) => ({ id, n, title: catalogue?.rubrics.find((r) => r.id === id)?.kind ?? "" }))
    .filter(({ id, title }) => id !== "" && title !== "")
    .sort((a, b) => b.n - a.n || names.compare(a.title, b.title));
  const places = [...found.places]
    .map(([id, { title, count }]) => ({ id, n: count, title }))
    .sort((a, b) => names.compare(a.title, b.title));
  const sum = (all: readonly { n: number }[]) => all.reduce((n, one) => n + one.n, 0);
  const states = [...STANDS, "away" as const].map((id) => ({
    id,
    n: found.states.get(id) ?? 0,
    title: id === "away" ? words.away : words.stands[id],
  }));
  return (
    <section class="finder" aria-label={words.sheet}>
      <FindField label={words.search} hint={words.searchIn} text={ask.q} onText={(q) => change({ q })} />
      <div class="finder-row">
        <Select
          label={words.state}
          value={ask.state}
          choose={(id) => change({ state: [...STANDS, "away" as const].find((one) => one === id) ?? "" })}
        >
          <option value="">{words.any(found.states.get("") ?? 0)}</option>
          <Options of={states.filter(({ id, n }) => n > 0 || id === ask.state)} />
        </Select>
        <Select label={words.kind} value={ask.kind} choose={(kind) => change({ kind })}>
          <option value="">{words.any(sum([...found.kinds.values()].map((n) => ({ n }))))}</option>
          <Options
            of={withChosen(kinds, ask.kind, catalogue?.rubrics.find((r) => r.id === ask.kind)?.kind)}
          />
        </Select>
        <Select label={words.place} value={ask.place} choose={(place) => change({ place })}>
          <option value="">{words.anyPlace}</option>
          <Options of={withChosen(places, ask.place)} />
        </Select>
        <Select
          label={words.sort}
          value={ask.sort}
          choose={(id) => change({ sort: SORTS.find((one) => one === id) ?? "touched" })}
        >
          {SORTS.map((id) => (
            <option key={id} value={id}>
              {words.sorts[id]}
            </option>
          ))}
        </Select>
      </div>
    </section>
  );
}

interface Option {
  id: string;
  title: string;
  n: number;
}

/** What is chosen stays in its list, though nothing is left of it. */
const withChosen = (all: Option[], id: string, title = id): Option[] =>
  id === "" || all.some((one) => one.id === id) ? all : [...all, { id, title, n: 0 }];

function Options({ of }: { of: readonly Option[] }) {
  return (
    <>
      {of.map(({ id, title, n }) => (
        <option key={id} value={id}>
          {words.choice(title, n)}
        </option>
      ))}
    </>
  );
}

function Select(props: {
  label: string;
  value: string;
  choose: (id: string) => void;
  children: ComponentChildren;
}) {
  const dom = useId();
  return (
    <Labelled label={props.label} for={dom}>
      <select id={dom} value={props.value} onChange={(e) => props.choose(e.currentTarget.value)}>
        {props.children}
      </select>
    </Labelled>
  );
}
