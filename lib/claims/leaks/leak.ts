// Leaks: covered work that has not been paid, by how the money was lost. Pure; nothing here knows today.
import type { Day } from "@/lib/calendar/day";
import type { Currency } from "@/lib/domain/money";
import type { ClaimItem } from "../claim";

/** How money is lost. That a filing day has passed is no leak of its own here: it is told from `dueOn` on the day of reading. */
export const leaks = {
  "never filed": "Covered, never filed",
  "parts only": "Only the part is covered, customer billed",
  campaign: "Campaign missed",
  "repeat absorbed": "Repeat borne by us, yet payable",
  "not corrected": "Rejected, never corrected",
  "short-paid": "Short-paid, not disputed",
  "part credit": "Credit for the part never posted",
  "charged back": "Charged back",
} as const;
export type Leak = keyof typeof leaks;
export const leakKeys = Object.keys(leaks) as readonly Leak[]; // Object.keys loses the key type

/** Leaks of work on which nothing was filed: these can become drafts, and these turn late. */
export const unfiledLeaks = ["never filed", "parts only", "campaign", "repeat absorbed"] as const satisfies Leak[];

const claimItems = ["parts", "labour", "trip", "diagnosis", "handling"] as const satisfies ClaimItem[];

/** Money of one job with one payer that was not asked for, or was asked for and not pursued. */
export interface LeakFound {
  readonly leak: Leak;
  /** Undefined where nothing was filed. */
  readonly claimNumber: string | undefined;
  readonly payer: string;
  readonly currency: Currency;
  /** Last day to file, to correct or to dispute; undefined where no clock runs. */
  readonly dueOn: Day | undefined;
  /** Whole cents, limits and the customer's share taken off. */
  readonly cents: Readonly<Record<ClaimItem, number>>;
  /** What has to be added before it can be filed. */
  readonly missing: readonly string[];
  readonly reason: string;
}

export function totalCents(cents: Readonly<Record<ClaimItem, number>>): number {
  return claimItems.reduce((sum, item) => sum + cents[item], 0);
}
