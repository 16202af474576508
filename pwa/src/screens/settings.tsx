import { useState } from "preact/hooks";
import { localeFor } from "../data/hand-over.ts";
import type { JsonInput } from "../data/value.ts";
import type { Catalogue, Shop } from "../generated/types.ts";
import { ChoiceField, MoneyField, NumberField, SelectField } from "../parts/field.tsx";
import { Page } from "../parts/page.tsx";
import { saveValue } from "../parts/save.ts";
import { catalogueProblem, useCatalogue } from "../parts/use-catalogue.ts";
import { useShop } from "../parts/use-shop.ts";
import { chooseTheme, type Theme, theme } from "../style/theme.ts";
import { pageWords, resultWords } from "../words/parts.ts";
import { settingsWords as words } from "../words/settings.ts";
import { chooseLocale, locale } from "../words/tongue.ts";
import { OddsField } from "./odds-field.tsx";
import { PercentField } from "./percent-field.tsx";
import { StorageReport } from "./storage-report.tsx";

/** The shop's own figures, and how this device is doing. */
export function SettingsScreen() {
  const catalogue = useCatalogue();
  const shop = useShop();
  return (
    <Page title={words.title}>
      {catalogue && <LanguageField locales={catalogue.locales} />}
      {shop && catalogue ? (
        <ShopFields shop={shop} catalogue={catalogue} />
      ) : (
        <p role="status">{catalogueProblem.value ? resultWords.noCatalogue : pageWords.loading}</p>
      )}
      <a class="button" href="/shop">
        {words.toShop}
      </a>
      <ThemeField />
      <StorageReport catalogue={catalogue} />
      <a class="button" href="/bench">
        {words.toBench}
      </a>
      <a class="button" href="/rubrics">
        {words.toRubrics}
      </a>
      <a class="button" href="/backup">
        {words.toBackup}
      </a>
    </Page>
  );
}

/** Saves one setting under its path. */
const keeper = (path: string, title: string) => (value: JsonInput) =>
  saveValue(words.label(title), "shop", path, value);

function ShopFields({ shop, catalogue }: { shop: Shop; catalogue: Catalogue }) {
  const { overrun } = shop;
  return (
    <>
      <section class="block" aria-label={words.measures}>
        <h2 class="block-title">{words.measures}</h2>
        <SelectField
          id="shop/currency"
          label={words.currency}
          hint={words.currencyHint}
          value={shop.currency}
          choices={catalogue.currencies.map((c) => ({ id: c, title: c }))}
          keep={keeper("currency", words.currency)}
        />
        <ChoiceField
          id="shop/units"
          label={words.units}
          value={shop.units}
          choices={[
            { id: "inch", title: words.inch },
            { id: "metric", title: words.metric },
          ]}
          row
          keep={keeper("units", words.units)}
        />
      </section>
      <section class="block" aria-label={words.rates}>
        <h2 class="block-title">{words.rates}</h2>
        <p class="quiet">{words.ratesHint}</p>
        <div class="field-row">
          {catalogue.trades.map((trade) => (
            <MoneyField
              key={trade.id}
              id={`shop/rate/${trade.id}`}
              label={trade.title}
              currency={shop.currency}
              cents={shop.rates[trade.id]}
              keep={keeper(`rate/${trade.id}`, trade.title)}
            />
          ))}
        </div>
      </section>
      <section class="block" aria-label={words.buying}>
        <h2 class="block-title">{words.buying}</h2>
        <div class="field-row">
          <PercentField
            id="shop/tax"
            label={words.tax}
            points={shop.tax}
            low={0}
            high={100}
            keep={keeper("tax", words.tax)}
          />
          <MoneyField
            id="shop/fees"
            label={words.fees}
            currency={shop.currency}
            cents={shop.fees}
            keep={keeper("fees", words.fees)}
          />
        </div>
        <OddsField
          odds={shop.odds}
          keep={({ opening, fair, walk_away }) => keeper("odds", words.odds)({ opening, fair, walk_away })}
        />
      </section>
      <section class="block" aria-label={words.overrun}>
        <h2 class="block-title">{words.overrun}</h2>
        <p class="quiet">{words.overrunHint}</p>
        <div class="field-row">
          <PercentField
            id="shop/overrun/mean"
            label={words.mean}
            points={overrun.mean}
            low={50}
            high={300}
            keep={(mean) => keeper("overrun", words.overrun)({ mean, sd: overrun.sd })}
          />
          <PercentField
            id="shop/overrun/sd"
            label={words.sd}
            points={overrun.sd}
            low={0}
            high={100}
            keep={(sd) => keeper("overrun", words.overrun)({ mean: overrun.mean, sd })}
          />
        </div>
        <NumberField
          id="shop/day"
          label={words.day}
          hint={words.dayHint}
          value={shop.day}
          low={0.5}
          high={24}
          keep={keeper("day", words.day)}
        />
        <PercentField
          id="shop/kept"
          label={words.kept}
          hint={words.keptHint}
          points={shop.kept}
          low={0}
          high={100}
          keep={keeper("kept", words.kept)}
        />
      </section>
    </>
  );
}

function LanguageField({ locales }: { locales: Catalogue["locales"] }) {
  const [failed, setFailed] = useState("");
  return (
    <>
      <SelectField
        id="locale"
        label={words.language}
        hint={words.languageHint}
        value={localeFor("", locales, [locale()])?.id ?? ""}
        choices={locales.map(({ id, title }) => ({ id, title }))}
        keep={(id) => {
          // Every screen reads its words at the start.
          if (chooseLocale(id)) location.reload();
          else setFailed(words.languageNotKept);
          return undefined;
        }}
      />
      {failed !== "" && <p role="alert">{failed}</p>}
    </>
  );
}

function ThemeField() {
  const [chosen, setChosen] = useState<Theme>(theme);
  return (
    <ChoiceField
      id="theme"
      label={words.theme}
      value={chosen}
      choices={[
        { id: "auto", title: words.themes.auto },
        { id: "light", title: words.themes.light },
        { id: "dark", title: words.themes.dark },
      ]}
      row
      keep={(id) => {
        const next: Theme = id === "light" || id === "dark" ? id : "auto";
        chooseTheme(next);
        setChosen(next);
        return undefined;
      }}
    />
  );
}
