import type { ComponentChildren } from "preact";
import { LocationProvider, Route, Router, useLocation } from "preact-iso";
import { Failure } from "./parts/failure.tsx";
import { Foot } from "./parts/foot.tsx";
import { Notices } from "./parts/notices.tsx";
import { Page } from "./parts/page.tsx";
import { Strip } from "./parts/strip.tsx";
import { useLargeLetters } from "./parts/use-large-letters.ts";
import { useDataState } from "./parts/use-live.ts";
import { BackupScreen } from "./screens/backup.tsx";
import { BenchScreen } from "./screens/bench.tsx";
import { BenchLimitScreen } from "./screens/bench-limit.tsx";
import { CheckScreen } from "./screens/check.tsx";
import { ComparablesScreen } from "./screens/comparables.tsx";
import { ComparablesImportScreen } from "./screens/comparables-import.tsx";
import { CompareScreen } from "./screens/compare.tsx";
import { EstimateScreen } from "./screens/estimate.tsx";
import { FitScreen } from "./screens/fit.tsx";
import { HomeScreen } from "./screens/home.tsx";
import { ListingScreen } from "./screens/listing.tsx";
import { ListingsScreen } from "./screens/listings.tsx";
import { NewListingScreen } from "./screens/new-listing.tsx";
import { OfferScreen } from "./screens/offer.tsx";
import { PricesScreen } from "./screens/prices.tsx";
import { ResultScreen } from "./screens/result.tsx";
import { RubricCheckScreen } from "./screens/rubric-check.tsx";
import { RubricEditScreen } from "./screens/rubric-edit.tsx";
import { RubricTextScreen } from "./screens/rubric-text.tsx";
import { RubricWeightsScreen } from "./screens/rubric-weights.tsx";
import { RubricsScreen } from "./screens/rubrics.tsx";
import { SettingsScreen } from "./screens/settings.tsx";
import { ShopScreen } from "./screens/shop.tsx";
import { VisitScreen } from "./screens/visit.tsx";
import { WalkaroundScreen } from "./screens/walkaround.tsx";
import { frameWords as words } from "./words/frame.ts";

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
      <Route path="/listing/:id/walk" component={WalkaroundScreen} />
      <Route path="/listing/:id/walk/:check" component={CheckScreen} />
      <Route path="/listing/:id/result" component={ResultScreen} />
      <Route path="/listing/:id/estimate" component={EstimateScreen} />
      <Route path="/listing/:id/offer" component={OfferScreen} />
      <Route path="/listing/:id/fit" component={FitScreen} />
      <Route path="/listing/:id/home" component={HomeScreen} />
      <Route path="/compare" component={CompareScreen} />
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
