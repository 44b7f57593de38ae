import type { Day } from "@/lib/calendar/day";
import type { CoverageFile } from "@/lib/coverage/job-coverage-facts";
import type { Claim, ClaimItem } from "../claim";
import type { ClaimCase } from "../claim-case";

/** The claim as it would be sent today, with what else is on file that a payer would hold against it. */
export interface FilingCase {
  readonly given: ClaimCase;
  /** Contracts and events of the unit, as the decision was given them. */
  readonly file: CoverageFile;
  readonly claim: Claim;
  readonly today: Day;
  readonly clock: FilingClockNow;
  /** Every other claim that is not withdrawn on the same unit, on the same job or with one of its invoice lines. */
  readonly others: readonly OtherClaim[];
  readonly parts: readonly KnownPart[];
  readonly serials: SerialsOfModel;
}

/** Filing for the first time, by the filing clock; or again after an answer, by a clock of its own. */
export type FilingClockNow =
  | { readonly kind: "first" }
  | { readonly kind: "again"; readonly resubmitBy: Day | undefined; readonly mayFileAgain: boolean };

export interface OtherClaim {
  readonly claimNumber: string;
  readonly jobNumber: string;
  readonly payer: string;
  readonly isSameUnit: boolean;
  readonly completedOn: Day;
  readonly items: readonly ClaimItem[];
  readonly invoiceLines: readonly InvoiceLine[];
}

export interface InvoiceLine {
  readonly invoiceNumber: string;
  readonly invoiceLine: string | undefined;
  readonly partNumber: string | undefined;
}

/** What the catalogue of parts and earlier jobs say of one number on this job. */
export interface KnownPart {
  readonly partNumber: string;
  readonly isInCatalogue: boolean;
  readonly component: string | undefined;
  readonly supersededBy: string | undefined;
  /** Other closed jobs on units of this model on which it was fitted. */
  readonly timesOnModel: number;
}

/** How the serials of the same model on the register are written. */
export interface SerialsOfModel {
  /** Letters as A and digits as 9, so AB1234 is AA9999; with how many units have it. */
  readonly shapes: readonly { readonly shape: string; readonly units: number }[];
  /** Other models on which the same serial stands. */
  readonly alsoOn: readonly string[];
}

export const filingCheckTitles = {
  part_invoice: "Part against its invoice line",
  purchase_date: "Purchase date",
  serial: "Serial against model",
  term: "Term on both days",
  repeat: "Repeat or claimed before",
  clock: "Filing clock",
  codes: "Complaint, component and part agree",
  authorization: "Authorization",
  wording: "Words that point to an exclusion",
  required_fields: "Required fields",
  documents: "Readings and photos",
} as const;
export type FilingCheckKey = keyof typeof filingCheckTitles;

export interface FilingCheck {
  readonly key: FilingCheckKey;
  readonly verdict: "passed" | "failed" | "cannot_tell";
  /** What was looked at and what it gave. */
  readonly found: readonly string[];
  /** What to do; never empty where it failed. */
  readonly fixes: readonly string[];
  readonly place: CheckPlace;
}

/** Where it can be mended. */
export type CheckPlace =
  | { readonly kind: "job" }
  /** Photos and papers of the job. */
  | { readonly kind: "papers" }
  | { readonly kind: "unit" }
  | { readonly kind: "claim"; readonly claimNumber: string };

export const onJob: CheckPlace = { kind: "job" };
export const onPapers: CheckPlace = { kind: "papers" };
export const onUnit: CheckPlace = { kind: "unit" };

/** What one look gave: fine, wrong with its fix, or open with what is missing. */
export interface Look {
  readonly fine?: string;
  readonly wrong?: string;
  readonly open?: string;
}

/** A check of several looks: failed by one that is wrong, else open by one that is open, else passed. */
export function checkOf(key: FilingCheckKey, place: CheckPlace, looks: readonly Look[]): FilingCheck {
  const wrong = looks.flatMap((look) => look.wrong ?? []);
  const open = looks.flatMap((look) => look.open ?? []);
  const verdict = wrong.length > 0 ? "failed" : open.length > 0 ? "cannot_tell" : "passed";
  return { key, verdict, found: looks.flatMap((look) => look.fine ?? []), fixes: [...wrong, ...open], place };
}
