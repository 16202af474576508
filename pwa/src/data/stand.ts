/** Where a listing stands for the buyer: what the walkaround tells, or what was said over it. */
import type { ListingSummary } from "./head.ts";

/** What a person says; the two before follow from the walkaround. */
export const SAID = ["offered", "bought", "let-go"] as const;
export const STANDS = ["to-look", "looked", ...SAID] as const;
export type Stand = (typeof STANDS)[number];

const isSaid = (state: string | undefined): state is (typeof SAID)[number] =>
  SAID.some((one) => one === state);

/** A state that this version does not know counts as not said. */
export function standOf(head: Pick<ListingSummary, "state" | "answered">): Stand {
  if (isSaid(head.state)) return head.state;
  return head.answered > 0 ? "looked" : "to-look";
}
