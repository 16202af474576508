import { useState } from "preact/hooks";
import type { Rubric } from "../generated/types.ts";
import { Hazard } from "../parts/hazard.tsx";
import { cautionWords as words } from "../words/walkaround.ts";

const key = "asfound-cautions-read";

/** Listings whose cautions were read on this device; each person reads them anew. */
const read = new Set<string>(stored());

function stored(): string[] {
  try {
    const list: unknown = JSON.parse(localStorage.getItem(key) ?? "[]");
    return Array.isArray(list) ? list.filter((id) => typeof id === "string") : [];
  } catch {
    return [];
  }
}

function markRead(id: string): void {
  read.add(id);
  try {
    localStorage.setItem(key, JSON.stringify([...read].slice(-500)));
  } catch {
    // Without storage they are read again next time.
  }
}

/** Whether the cautions of this listing were read here, and marking them so. */
export function useCautionsRead(id: string): [boolean, () => void] {
  const [, again] = useState(0);
  return [
    read.has(id),
    () => {
      markRead(id);
      again((n) => n + 1);
      window.scrollTo(0, 0);
    },
  ];
}

/** The cautions of a kind of equipment. */
export function CautionCard({ rubric, first }: { rubric: Rubric; first?: boolean }) {
  return (
    <section class="caution-card" aria-label={words.title}>
      <Hazard word="warning" />
      {first && <p>{words.lead}</p>}
      <ul class="ruled">
        {rubric.cautions.map((line) => (
          <li key={line}>{line}</li>
        ))}
        <li>{words.manual}</li>
      </ul>
    </section>
  );
}
