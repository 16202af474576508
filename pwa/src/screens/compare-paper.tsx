import { useLocation } from "preact-iso";
import { Page } from "../parts/page.tsx";
import { paperWords as words } from "../words/papers.ts";
import { fileName } from "./paper-name.ts";
import { PaperPage } from "./paper-page.tsx";
import { today } from "./today.ts";
import { useComparisonPaper } from "./use-paper.ts";

/** The comparison as a sheet; its address names the listings: `?ids=a,b`. */
export function ComparePaperScreen() {
  const { query } = useLocation();
  const ids = (query.ids ?? "").split(",").filter((id) => id !== "");
  if (ids.length < 2) {
    return (
      <Page
        title={words.comparison.title}
        back="/compare"
        backTitle={words.toCompare}
        actions={
          <a class="button button-main" href="/compare">
            {words.toCompare}
          </a>
        }
      >
        <p>{words.compareFew}</p>
      </Page>
    );
  }
  return <Sheet key={ids.join()} ids={ids} />;
}

function Sheet({ ids }: { ids: string[] }) {
  return (
    <PaperPage
      title={words.comparison.title}
      back={`/compare?of=${ids.join(",")}`}
      backTitle={words.toCompare}
      paper={useComparisonPaper(ids)}
      name={fileName("comparison", today())}
    />
  );
}
