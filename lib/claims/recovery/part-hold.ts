import { addDays, type Day } from "@/lib/calendar/day";
import type { ClaimState } from "../life/claim-standing";

/** Whether a failed part must still be kept for the payer of its claim. */
export type PartHold =
  | { readonly kind: "keep until"; readonly until: Day }
  /** The clock begins with a payment that has not come. */
  | { readonly kind: "keep until paid" }
  /** An audit asks for parts whatever the clock says. */
  | { readonly kind: "keep for audit" }
  /** The day after its last day of keeping; undefined where the claim ended before any clock began. */
  | { readonly kind: "may go"; readonly from: Day | undefined };

/**
 * The last day to keep a part is the policy's own clock. A claim that was given up before the clock began holds nothing.
 * Times to hold are the payer's terms; where terms are silent, until paid plus 15 to 30 days is common practice, no source.
 */
export function partHold(
  { state, keepUntil }: { readonly state: ClaimState; readonly keepUntil: Day | undefined },
  today: Day,
): PartHold {
  if (state === "in audit") return { kind: "keep for audit" };
  if (keepUntil !== undefined)
    return keepUntil >= today
      ? { kind: "keep until", until: keepUntil }
      : { kind: "may go", from: addDays(keepUntil, 1) };
  return ended.has(state) ? { kind: "may go", from: undefined } : { kind: "keep until paid" };
}

const ended: ReadonlySet<ClaimState> = new Set(["written off", "clawed back", "withdrawn"]);
