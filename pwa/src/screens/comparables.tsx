import "../style/money.css";
import { useMemo, useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import { newId } from "../data/id.ts";
import type { Catalogue, Shop } from "../generated/types.ts";
import { showMoney } from "../parts/money.ts";
import { Banner, Page } from "../parts/page.tsx";
import { save } from "../parts/save.ts";
import { catalogueProblem, useCatalogue } from "../parts/use-catalogue.ts";
import { useDoc } from "../parts/use-listing.ts";
import { useShop } from "../parts/use-shop.ts";
import { comparablesWords as words } from "../words/comparables.ts";
import { comparableAbout } from "./comparable-about.ts";
import { ComparableForm } from "./comparable-form.tsx";
import { blankItem, type Item, itemOf } from "./comparable-item.ts";
import { FindField, matches } from "./find-field.tsx";
import { OpenedFold } from "./opened-fold.tsx";
import { today } from "./today.ts";

/** How many are listed before the rest is asked for. */
const shown = 50;

/** Other sales and offers, by kind of equipment. */
export function ComparablesScreen() {
  const catalogue = useCatalogue();
  const shop = useShop();
  const stored = useDoc("comparables");
  const { query } = useLocation();
  const [adding, setAdding] = useState<Item | undefined>(undefined);
  const [search, setSearch] = useState("");
  const { items, unreadable } = useMemo(() => {
    const found: Item[] = [];
    const bad: string[] = [];
    for (const [path, value] of stored?.values ?? []) {
      if (!path.startsWith("item/")) continue;
      const item = itemOf(path.slice(5), value);
      if (item) found.push(item);
      else bad.push(path);
    }
    found.sort((a, b) => (b.date ?? "").localeCompare(a.date ?? "") || (a.id < b.id ? 1 : -1));
    return { items: found, unreadable: bad };
  }, [stored]);
  if (!catalogue || !shop || !stored) {
    return (
      <Page title={words.title}>
        {catalogueProblem.value ? (
          <Banner tone="problem" urgent>
            {catalogueProblem.value}
          </Banner>
        ) : (
          <p role="status">{words.loading}</p>
        )}
      </Page>
    );
  }
  const kind = query.kind ?? items[0]?.kind ?? catalogue.rubrics[0]?.id ?? "";
  const add = (
    <>
      {!adding && (
        <a class="button" href={`/comparables/import?kind=${kind}`}>
          {words.toImport}
        </a>
      )}
      <button
        type="button"
        class="button button-main"
        onClick={() => setAdding(adding ? undefined : blankItem(newId(), kind, today()))}
      >
        {adding ? words.done : words.add}
      </button>
    </>
  );
  const asked = adding ? undefined : items.find((i) => i.id === query.item);
  const found = items.filter(
    (i) =>
      i.id !== adding?.id &&
      i.id !== asked?.id &&
      (search === "" || matches(`${i.title} ${i.place ?? ""} ${i.seen ?? ""}`, search)),
  );
  const kinds = [
    ...new Set([
      ...(query.kind ? [query.kind] : []),
      ...catalogue.rubrics.map((r) => r.id),
      ...found.map((i) => i.kind),
    ]),
  ];
  return (
    <Page title={words.title} actions={add}>
      {adding ? (
        <section class="block">
          <h2 class="block-title">{words.adding}</h2>
          <ComparableForm
            key={adding.id}
            item={adding}
            catalogue={catalogue}
            shop={shop}
            kept={stored.values.has(`item/${adding.id}`)}
            onKept={setAdding}
            onRemoved={() => setAdding(undefined)}
          />
        </section>
      ) : (
        <p class="hint">{words.about}</p>
      )}
      {asked && (
        <section class="block">
          <h2 class="block-title" dir="auto">
            {asked.title || words.untitled}
          </h2>
          <ComparableForm
            key={asked.id}
            item={asked}
            catalogue={catalogue}
            shop={shop}
            kept
            onRemoved={() => undefined}
          />
        </section>
      )}
      {items.length > 6 && <FindField label={words.search} text={search} onText={setSearch} />}
      {items.length === 0 && !adding && <p>{words.none}</p>}
      {items.length > 0 && found.length === 0 && search !== "" && <p>{words.noneFound(search)}</p>}
      {kinds.map((id) => (
        <Kind
          key={id}
          title={catalogue.rubrics.find((r) => r.id === id)?.kind ?? words.kindUnknown}
          items={found.filter((i) => i.kind === id)}
          catalogue={catalogue}
          shop={shop}
        />
      ))}
      {unreadable.length > 0 && <Unreadable paths={unreadable} />}
    </Page>
  );
}

/** What stands among the comparables and is none: said, never dropped in silence. */
function Unreadable({ paths }: { paths: string[] }) {
  return (
    <section class="block">
      <h2 class="block-title">{words.unreadable}</h2>
      <p class="hint">{words.unreadableHint}</p>
      {paths.map((path) => (
        <div key={path} class="button-row">
          <span>{path}</span>
          <button
            type="button"
            class="button button-away"
            onClick={() => void save(words.removed, [{ doc: "comparables", path, value: null }])}
          >
            {words.remove}
          </button>
        </div>
      ))}
    </section>
  );
}

function Kind(props: { title: string; items: Item[]; catalogue: Catalogue; shop: Shop }) {
  const { items, catalogue, shop } = props;
  const [most, setMost] = useState(shown);
  if (items.length === 0) return null;
  return (
    <section class="block">
      <h2 class="block-title">{props.title}</h2>
      <div>
        {items.slice(0, most).map((item) => (
          <OpenedFold
            key={item.id}
            summary={
              <span dir="auto" class={item.off ? "off" : ""}>
                {item.title || words.untitled}
                <span class="row-note figures">{comparableAbout(item, catalogue)}</span>
              </span>
            }
            aside={item.price > 0 ? showMoney(item.price, shop.currency) : words.noPrice}
          >
            {() => (
              <ComparableForm
                item={item}
                catalogue={catalogue}
                shop={shop}
                kept
                onRemoved={() => undefined}
              />
            )}
          </OpenedFold>
        ))}
      </div>
      {items.length > most && (
        <button type="button" class="button" onClick={() => setMost(most + shown)}>
          {words.more(Math.min(shown, items.length - most))}
        </button>
      )}
    </section>
  );
}
