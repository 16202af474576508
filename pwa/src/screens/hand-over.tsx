import "../style/hand-over.css";
import {
  handOverOf,
  handOverPath,
  localeFor,
  MOST_CONTACT,
  MOST_NAME,
  MOST_WORD,
  pageOf,
} from "../data/hand-over.ts";
import { linksOf } from "../data/links.ts";
import { textOf } from "../data/shape.ts";
import type { Choice, Result } from "../generated/types.ts";
import { ChoiceField, MoneyField, SelectField, TextField } from "../parts/field.tsx";
import { showMoney } from "../parts/money.ts";
import { Banner } from "../parts/page.tsx";
import { saveValue } from "../parts/save.ts";
import { useCatalogue } from "../parts/use-catalogue.ts";
import { type ListingDoc, useDoc, useListing } from "../parts/use-listing.ts";
import { useShop } from "../parts/use-shop.ts";
import { handOverWords as words } from "../words/hand-over.ts";
import { locale as spoken } from "../words/tongue.ts";
import { AnswerList } from "./answer-list.tsx";
import { GoesIn } from "./hand-over-parts.tsx";
import { JudgedPage } from "./judged-page.tsx";
import { LinkList } from "./link-list.tsx";
import { useLookup } from "./rubric-lookup.ts";
import { usePaper } from "./use-paper.ts";

/** What goes into the paper for the seller, before it is looked at and handed over. */
export function HandOverScreen({ id }: { id: string }) {
  const lookup = useLookup(useListing(id)?.values.get("rubric"));
  const actions = (
    <>
      <a class="button" href={`/listing/${id}/papers`}>
        {words.toPapers}
      </a>
      <a class="button button-main" href={`/listing/${id}/hand-over/preview`}>
        {words.toPreview}
      </a>
    </>
  );
  return (
    <JudgedPage id={id} title={words.title} back={`/listing/${id}`} backTitle={words.back} actions={actions}>
      {(result, listing) => (
        <>
          <Ahead id={id} />
          <p>{words.lead}</p>
          <AnswerList listing={listing} lookup={lookup} />
          <People listing={listing} />
          <Form listing={listing} />
          <GoesIn listing={listing} result={result} lookup={lookup} />
          <Said listing={listing} result={result} />
          <LinkList listing={listing} links={linksOf(listing.values)} />
        </>
      )}
    </JudgedPage>
  );
}

/** Makes the paper and its photo copies while the choice is made, so that they are there when they are asked for. */
function Ahead({ id }: { id: string }) {
  usePaper(id, "estimate");
  return null;
}

type Path = Parameters<typeof handOverPath>[0];

/** Keeps one choice with the listing; a text of nothing is none. */
const keeper = (listing: ListingDoc, path: Path, label: string) => (value: string | number | null) =>
  saveValue(
    words.set(label),
    listing.doc,
    handOverPath(path),
    typeof value === "string" && value.trim() === "" ? null : value,
  );

function People({ listing }: { listing: ListingDoc }) {
  const shop = useDoc("shop");
  if (!shop) return null;
  const own = (path: string, label: string) => (text: string) =>
    saveValue(words.set(label), "shop", path, text.trim() === "" ? null : text);
  return (
    <section class="block" aria-label={words.who}>
      <h2 class="block-title">{words.who}</h2>
      <TextField
        id="shop/name"
        label={words.name}
        hint={words.nameHint}
        most={MOST_NAME}
        value={textOf(shop.values.get("name")) ?? ""}
        keep={own("name", words.name)}
      />
      <TextField
        id="shop/contact"
        label={words.contact}
        hint={words.contactHint}
        most={MOST_CONTACT}
        value={textOf(shop.values.get("contact")) ?? ""}
        keep={own("contact", words.contact)}
      />
      <TextField
        id={`${listing.doc}/${handOverPath("seller")}`}
        label={words.seller}
        hint={words.sellerHint}
        most={MOST_NAME}
        value={handOverOf(listing.values).seller}
        keep={keeper(listing, "seller", words.seller)}
      />
    </section>
  );
}

function Form({ listing }: { listing: ListingDoc }) {
  const catalogue = useCatalogue();
  const shop = useShop();
  if (!catalogue || !shop) return null;
  const choice = handOverOf(listing.values);
  const locale = localeFor(choice.locale, catalogue.locales, [spoken(), ...navigator.languages]);
  const pages: Choice[] = [
    { id: "letter", title: words.letter },
    { id: "a4", title: words.a4 },
  ];
  return (
    <section class="block" aria-label={words.form}>
      <h2 class="block-title">{words.form}</h2>
      <SelectField
        id={`${listing.doc}/${handOverPath("locale")}`}
        label={words.language}
        value={locale?.id ?? ""}
        choices={catalogue.locales.map((l) => ({ id: l.id, title: l.title }))}
        keep={keeper(listing, "locale", words.language)}
      />
      <ChoiceField
        id={`${listing.doc}/${handOverPath("units")}`}
        label={words.units}
        value={choice.units === "" ? shop.units : choice.units}
        choices={[
          { id: "inch", title: words.inch },
          { id: "metric", title: words.metric },
        ]}
        row
        keep={keeper(listing, "units", words.units)}
      />
      <ChoiceField
        id={`${listing.doc}/${handOverPath("page")}`}
        label={words.page}
        value={choice.page === "" ? pageOf(locale?.id ?? "") : choice.page}
        choices={pages}
        row
        keep={keeper(listing, "page", words.page)}
      />
    </section>
  );
}

/** The price stated, if any, and the buyer's own words. */
function Said({ listing, result }: { listing: ListingDoc; result: Result }) {
  const { price, word } = handOverOf(listing.values);
  return (
    <section class="block" aria-label={words.said}>
      <h2 class="block-title">{words.said}</h2>
      <MoneyField
        id={`${listing.doc}/${handOverPath("price")}`}
        label={words.price}
        hint={words.priceHint}
        cents={price}
        currency={result.currency}
        keep={keeper(listing, "price", words.price)}
      />
      {price !== undefined && (
        <Banner tone="note">{words.priceSeen(showMoney(price, result.currency))}</Banner>
      )}
      <TextField
        id={`${listing.doc}/${handOverPath("word")}`}
        label={words.word}
        hint={words.wordHint}
        lines={3}
        most={MOST_WORD}
        value={word}
        keep={keeper(listing, "word", words.word)}
      />
    </section>
  );
}
