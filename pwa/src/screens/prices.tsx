import "../style/money.css";
import { useMemo, useState } from "preact/hooks";
import { percent } from "../charts/format.ts";
import { rangeOf } from "../data/shape.ts";
import type { Part, Range } from "../generated/types.ts";
import { Banner, Page } from "../parts/page.tsx";
import { RangeInput } from "../parts/range-input.tsx";
import { save, saveValue } from "../parts/save.ts";
import { catalogueProblem, useCatalogue } from "../parts/use-catalogue.ts";
import { useDoc } from "../parts/use-listing.ts";
import { useShop } from "../parts/use-shop.ts";
import { pricesWords as words } from "../words/prices.ts";
import { showRange } from "./amounts.tsx";
import { FindField, matches } from "./find-field.tsx";
import { OpenedFold } from "./opened-fold.tsx";
import { NewPart, RemovePart } from "./prices-own-part.tsx";
import { PricesTable } from "./prices-table.tsx";

/** Own prices of parts, over the dated examples that hold until then. */
export function PricesScreen() {
  const catalogue = useCatalogue();
  const shop = useShop();
  const stored = useDoc("book");
  const [search, setSearch] = useState("");
  const [onlyOwn, setOnlyOwn] = useState(false);
  const own = useMemo(() => {
    const found = new Map<string, Range>();
    for (const [path, value] of stored?.values ?? []) {
      const range = path.startsWith("part/") ? rangeOf(value) : undefined;
      if (range) found.set(path.slice(5), range);
    }
    return found;
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
  const { parts, parts_dated: dated } = catalogue;
  const found = parts.filter(
    (p) => (!onlyOwn || own.has(p.id)) && (search === "" || matches(p.title, search)),
  );
  const known = new Set(parts.map((p) => p.id));
  const mine = new Set(catalogue.ownParts.map((p) => p.id));
  const lost = [...own].filter(([id]) => !known.has(id));
  return (
    <Page title={words.title}>
      <p class="hint">{words.about(dated)}</p>
      {shop.region !== undefined && <p class="hint">{words.region(percent(shop.region / 10_000))}</p>}
      <PricesTable own={own} parts={catalogue.ownParts} currency={shop.currency} />
      <NewPart parts={parts} currency={shop.currency} />
      <FindField label={words.search} text={search} onText={setSearch} />
      <label class="choice-item">
        <input type="checkbox" checked={onlyOwn} onChange={(e) => setOnlyOwn(e.currentTarget.checked)} />
        <span>
          {words.onlyOwn}
          <span class="row-note figures">{words.ownCount(own.size - lost.length, parts.length)}</span>
        </span>
      </label>
      {found.length === 0 && <p>{search === "" ? words.noneOwn : words.noneFound(search)}</p>}
      <div>
        {found.map((part) => (
          <PartRow
            key={part.id}
            part={part}
            mine={mine.has(part.id)}
            own={own.get(part.id)}
            currency={shop.currency}
            dated={dated}
          />
        ))}
      </div>
      {lost.length > 0 && (
        <section class="block">
          <h2 class="block-title">{words.unknown}</h2>
          <p class="hint">{words.unknownHint}</p>
          <ul class="plain-list">
            {lost.map(([id, range]) => (
              <li key={id} class="figures">
                {id}: {showRange(range, shop.currency)}
              </li>
            ))}
          </ul>
        </section>
      )}
    </Page>
  );
}

function PartRow(props: {
  part: Part;
  mine: boolean;
  own: Range | undefined;
  currency: string;
  dated: string;
}) {
  const { part, own, currency } = props;
  return (
    <OpenedFold
      summary={
        <span dir="auto">
          {part.title}
          <span class="row-note">
            {words.per(part.unit)} · {own || props.mine ? <b>{words.own}</b> : words.example}
          </span>
        </span>
      }
      aside={showRange(own ?? part.price, currency)}
    >
      {() => (
        <>
          <p class="hint figures">
            {props.mine
              ? words.ownPart(part.id)
              : words.exampleOf(showRange(part.price, currency), props.dated)}
          </p>
          <RangeInput
            id={`book/${part.id}`}
            label={words.ownPrice(part.unit)}
            currency={currency}
            range={own}
            example={part.price}
            hint={words.emptyIsExample}
            keep={(range) =>
              saveValue(words.setPart, "book", `part/${part.id}`, range === null ? null : { ...range })
            }
          />
          {props.mine && <RemovePart part={part} />}
          {own && (
            <button
              type="button"
              class="button"
              onClick={() =>
                void save(words.resetLabel, [{ doc: "book", path: `part/${part.id}`, value: null }])
              }
            >
              {words.reset}
            </button>
          )}
        </>
      )}
    </OpenedFold>
  );
}
