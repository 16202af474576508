import type { ComponentChildren } from "preact";
import { LocationProvider, lazy, Route, Router, useLocation } from "preact-iso";
import { Failure } from "./parts/failure.tsx";
import { Foot } from "./parts/foot.tsx";
import { Notices } from "./parts/notices.tsx";
import { Page } from "./parts/page.tsx";
import { Strip } from "./parts/strip.tsx";
import { useLargeLetters } from "./parts/use-large-letters.ts";
import { useDataState } from "./parts/use-live.ts";
import { CheckScreen } from "./screens/check.tsx";
import { EstimateScreen } from "./screens/estimate.tsx";
import { ListingScreen } from "./screens/listing.tsx";
import { ListingsScreen } from "./screens/listings.tsx";
import { NewListingScreen } from "./screens/new-listing.tsx";
import { OfferScreen } from "./screens/offer.tsx";
import { ResultScreen } from "./screens/result.tsx";
import { WalkaroundScreen } from "./screens/walkaround.tsx";
import { frameWords as words } from "./words/frame.ts";

// What no walkaround needs is a script of its own: kept on the device like the rest, read when asked for.
const BackupScreen = lazy(() => import("./screens/backup.tsx").then((m) => m.BackupScreen));
const BenchScreen = lazy(() => import("./screens/bench.tsx").then((m) => m.BenchScreen));
const BenchLimitScreen = lazy(() => import("./screens/bench-limit.tsx").then((m) => m.BenchLimitScreen));
const ComparablesScreen = lazy(() => import("./screens/comparables.tsx").then((m) => m.ComparablesScreen));
const ComparablesImportScreen = lazy(() =>
  import("./screens/comparables-import.tsx").then((m) => m.ComparablesImportScreen),
);
const CompareScreen = lazy(() => import("./screens/compare.tsx").then((m) => m.CompareScreen));
const DecideScreen = lazy(() => import("./screens/decide.tsx").then((m) => m.DecideScreen));
const DecisionScreen = lazy(() => import("./screens/decision.tsx").then((m) => m.DecisionScreen));
const DecisionsScreen = lazy(() => import("./screens/decisions.tsx").then((m) => m.DecisionsScreen));
const FitScreen = lazy(() => import("./screens/fit.tsx").then((m) => m.FitScreen));
const HomeScreen = lazy(() => import("./screens/home.tsx").then((m) => m.HomeScreen));
const PhotoScreen = lazy(() => import("./screens/photo.tsx").then((m) => m.PhotoScreen));
const PricesScreen = lazy(() => import("./screens/prices.tsx").then((m) => m.PricesScreen));
const RubricCheckScreen = lazy(() => import("./screens/rubric-check.tsx").then((m) => m.RubricCheckScreen));
const RubricEditScreen = lazy(() => import("./screens/rubric-edit.tsx").then((m) => m.RubricEditScreen));
const RubricTextScreen = lazy(() => import("./screens/rubric-text.tsx").then((m) => m.RubricTextScreen));
const RubricWeightsScreen = lazy(() =>
  import("./screens/rubric-weights.tsx").then((m) => m.RubricWeightsScreen),
);
const RubricsScreen = lazy(() => import("./screens/rubrics.tsx").then((m) => m.RubricsScreen));
const SettingsScreen = lazy(() => import("./screens/settings.tsx").then((m) => m.SettingsScreen));
const ShopScreen = lazy(() => import("./screens/shop.tsx").then((m) => m.ShopScreen));
const UniteScreen = lazy(() => import("./screens/listing-unite.tsx").then((m) => m.UniteScreen));
const VisitScreen = lazy(() => import("./screens/visit.tsx").then((m) => m.VisitScreen));

/** The whole app: the strip, what must be known, the screen of this address, the bar. */
export function App() {
  useLargeLetters();
  return (
    <LocationProvider>
      <a class="skip" href="#main">
        {words.skip}
      </a>
      <Strip />
      <Notices />
      <PerAddress>
        <Screens />
      </PerAddress>
      <Foot />
    </LocationProvider>
  );
}

/** A screen that failed fails alone: another address starts afresh. */
function PerAddress({ children }: { children: ComponentChildren }) {
  const { path } = useLocation();
  return <Failure key={path}>{children}</Failure>;
}

function Screens() {
  const { mode } = useDataState();
  if (mode === "opening") {
    return (
      <Page title={words.name}>
        <p>{words.opening}</p>
      </Page>
    );
  }
  return (
    <Router>
      <Route path="/" component={ListingsScreen} />
      <Route path="/new" component={NewListingScreen} />
      <Route path="/listing/:id" component={ListingScreen} />
      <Route path="/listing/:id/visit" component={VisitScreen} />
      <Route path="/listing/:id/photo/:hash" component={PhotoScreen} />
      <Route path="/listing/:id/walk" component={WalkaroundScreen} />
      <Route path="/listing/:id/walk/:check" component={CheckScreen} />
      <Route path="/listing/:id/walk/:check/photo/:hash" component={PhotoScreen} />
      <Route path="/listing/:id/result" component={ResultScreen} />
      <Route path="/listing/:id/estimate" component={EstimateScreen} />
      <Route path="/listing/:id/offer" component={OfferScreen} />
      <Route path="/listing/:id/fit" component={FitScreen} />
      <Route path="/listing/:id/home" component={HomeScreen} />
      <Route path="/listing/:id/unite" component={UniteScreen} />
      <Route path="/compare" component={CompareScreen} />
      <Route path="/compare/decide" component={DecideScreen} />
      <Route path="/decisions" component={DecisionsScreen} />
      <Route path="/decisions/:id" component={DecisionScreen} />
      <Route path="/comparables" component={ComparablesScreen} />
      <Route path="/comparables/import" component={ComparablesImportScreen} />
      <Route path="/prices" component={PricesScreen} />
      <Route path="/bench" component={BenchScreen} />
      <Route path="/bench/:name" component={BenchLimitScreen} />
      <Route path="/rubrics" component={RubricsScreen} />
      <Route path="/rubrics/:id" component={RubricEditScreen} />
      <Route path="/rubrics/:id/check/:check" component={RubricCheckScreen} />
      <Route path="/rubrics/:id/text" component={RubricTextScreen} />
      <Route path="/rubrics/:id/weights" component={RubricWeightsScreen} />
      <Route path="/settings" component={SettingsScreen} />
      <Route path="/shop" component={ShopScreen} />
      <Route path="/backup" component={BackupScreen} />
      <Route default component={NotFound} />
    </Router>
  );
}

function NotFound() {
  return (
    <Page
      title={words.notFound}
      actions={
        <a class="button button-main" href="/">
          {words.toListings}
        </a>
      }
    >
      <p>{words.notFoundWhy}</p>
    </Page>
  );
}
