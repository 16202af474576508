import { isRecord } from "../data/shape.ts";
import type { Json, JsonInput } from "../data/value.ts";
import { saveValue } from "./save.ts";
import type { ListingDoc } from "./use-listing.ts";
import { useWhole } from "./use-whole.ts";

type Members = { [name: string]: Json };
type Change = { readonly [name: string]: JsonInput | undefined };

/** A function sees what the members are at that moment, and may answer what is wrong with them instead. */
type Keep = (change: Change | null | ((now: Members) => Change | string)) => Promise<string | undefined>;

/** Members that say nothing go. */
export function full(members: Change): Members {
  const left = Object.entries(members).filter(([, v]) => v !== undefined && v !== null && v !== "");
  return JSON.parse(JSON.stringify(Object.fromEntries(left))) as Members;
}

/**
 * One stored object of a listing whose members are fields of their own. `keep` changes
 * some of them, or all that are (`null`); what is empty is removed, and with its last member the object.
 */
export function useMembers(
  listing: ListingDoc,
  path: string,
  label: string,
): { members: Members; keep: Keep } {
  const stored = listing.values.get(path);
  const whole = useWhole<Json | undefined>(stored);
  const keep: Keep = async (change) => {
    const now = isRecord(whole.current) ? whole.current : {};
    const wanted = typeof change === "function" ? change(now) : change;
    if (typeof wanted === "string") return wanted;
    const next = wanted && full({ ...now, ...wanted });
    whole.current = next && Object.keys(next).length > 0 ? next : null;
    return saveValue(label, listing.doc, path, whole.current);
  };
  return { members: isRecord(stored) ? stored : {}, keep };
}
