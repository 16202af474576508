import { integerOf, textOf } from "../data/shape.ts";
import { SelectField, TextField } from "../parts/field.tsx";
import { Page } from "../parts/page.tsx";
import { catalogueProblem, useCatalogue } from "../parts/use-catalogue.ts";
import { useDoc } from "../parts/use-listing.ts";
import { pageWords, resultWords } from "../words/parts.ts";
import { shopWords as words } from "../words/shop.ts";
import { SharePercentField } from "./percent-field.tsx";
import { PhasesField } from "./phases-field.tsx";
import { Gear, Region, TieDowns } from "./shop-gear.tsx";
import { keeper, type Own, Size } from "./shop-size.tsx";

/** The buyer's own shop: where it is to stand, what feeds it, and what brings it there. */
export function ShopScreen() {
  const catalogue = useCatalogue();
  const stored = useDoc("shop");
  return (
    <Page title={words.title} back="/settings" backTitle={words.back}>
      {catalogue && stored ? (
        <Fields own={{ catalogue, values: stored.values }} />
      ) : (
        <p role="status">{catalogueProblem.value ? resultWords.noCatalogue : pageWords.loading}</p>
      )}
    </Page>
  );
}

function Fields({ own }: { own: Own }) {
  return (
    <>
      <p class="quiet">{words.lead}</p>
      <Room own={own} />
      <Supply own={own} />
      <Vehicle own={own} />
      <Sizes own={own} title={words.truck} of="haul.truck" names={["rated", "empty", "people", "tow"]} />
      <Sizes
        own={own}
        title={words.trailer}
        of="haul.trailer"
        names={["rated", "empty", "deck", "tongue", "axle"]}
      />
      <Gear own={own} />
      <TieDowns own={own} />
      <Region own={own} />
    </>
  );
}

function SizeRow({ own, of, names }: { own: Own; of: string; names: string[] }) {
  return (
    <div class="field-row">
      {names.map((name) => (
        <Size key={name} own={own} field={`${of}.${name}`} />
      ))}
    </div>
  );
}

function Sizes({ title, ...rest }: { own: Own; title: string; of: string; names: string[] }) {
  return (
    <section class="block" aria-label={title}>
      <h2 class="block-title">{title}</h2>
      <SizeRow {...rest} />
    </section>
  );
}

function Room({ own }: { own: Own }) {
  const keep = keeper(own, "site/floor", words.floor);
  return (
    <section class="block" aria-label={words.room}>
      <h2 class="block-title">{words.room}</h2>
      <SizeRow
        own={own}
        of="site"
        names={["ceiling", "door_width", "door_height", "floor_length", "floor_width"]}
      />
      <SelectField
        id="shop/site/floor"
        label={words.floor}
        value={textOf(own.values.get("site/floor")) ?? ""}
        choices={own.catalogue.floors}
        unset={words.notTold}
        keep={(id) => keep(id === "" ? null : id)}
      />
      <SizeRow own={own} of="site" names={["slab", "slab_strength"]} />
    </section>
  );
}

function Supply({ own }: { own: Own }) {
  return (
    <section class="block" aria-label={words.supply}>
      <h2 class="block-title">{words.supply}</h2>
      <p class="quiet">{words.electrician}</p>
      <PhasesField
        id="shop/site/phases"
        label={words.phases}
        value={integerOf(own.values.get("site/phases"))}
        keep={keeper(own, "site/phases", words.phases)}
      />
      <SizeRow
        own={own}
        of="site"
        names={["voltage", "current", "circuit", "run", "generator", "air_pressure", "air_flow"]}
      />
    </section>
  );
}

function Vehicle({ own }: { own: Own }) {
  const title = "site/vehicle/title";
  const front = "site/vehicle/front";
  return (
    <section class="block" aria-label={words.vehicle}>
      <h2 class="block-title">{words.vehicle}</h2>
      <p class="quiet">{words.vehicleLead}</p>
      <TextField
        id={`shop/${title}`}
        label={words.vehicleTitle}
        value={textOf(own.values.get(title)) ?? ""}
        keep={(text) => keeper(own, title, words.vehicleTitle)(text.trim() === "" ? null : text)}
      />
      <SizeRow own={own} of="site.vehicle" names={["weight", "height"]} />
      <SharePercentField
        id={`shop/${front}`}
        label={words.front}
        hint={words.frontHint}
        points={integerOf(own.values.get(front))}
        low={1}
        high={99}
        keep={keeper(own, front, words.front)}
      />
    </section>
  );
}
