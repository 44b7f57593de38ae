// From a decided and proven job to a claim: what is asked, of whom, on which grounds, by when, and what still lacks.
import type { Day } from "@/lib/calendar/day";
import type { CoverSource } from "@/lib/coverage/coverage-decision";
import type { RepeatDecision } from "@/lib/coverage/decide-repeat";
import type { Currency } from "@/lib/domain/money";
import type { PayItem } from "@/lib/domain/pay-item";
import type { WordWarning } from "@/lib/evidence/evidence-check";

export type ClaimAssembly =
  | { readonly kind: "claim"; readonly claim: Claim }
  | { readonly kind: "blocked"; readonly reasons: readonly BlockReason[]; readonly tasks: readonly ClaimTask[] };

export interface Claim {
  readonly jobNumber: string;
  /** The policy version, or the campaign in it, that pays. A job may give one claim for each. */
  readonly source: CoverSource;
  readonly currency: Currency;
  readonly lines: readonly ClaimLine[];
  /** Limits and the customer's share, taken off the lines. */
  readonly deductions: readonly ClaimDeduction[];
  readonly totalCents: number;
  readonly filing: ClaimFiling;
  readonly tasks: readonly ClaimTask[];
  /** Nothing is missing, so it may be filed. */
  readonly isReady: boolean;
  /** Words a payer may read as an exclusion. The text stays as the technician wrote it. */
  readonly warnings: readonly WordWarning[];
  readonly repeat: RepeatDecision | undefined;
}

export type ClaimItem = PayItem | "handling";

export interface ClaimLine {
  readonly item: ClaimItem;
  readonly description: string;
  readonly quantity: number;
  readonly cents: number;
  /** How the amount came about, in words with its numbers. */
  readonly basis: string;
  readonly partNumber: string | undefined;
  readonly invoiceNumber: string | undefined;
  readonly invoiceLine: string | undefined;
}

export interface ClaimDeduction {
  readonly kind: "parts_cap" | "claim_cap" | "deductible" | "per_claim_limit";
  readonly cents: number;
  readonly basis: string;
}

export interface ClaimFiling {
  readonly by: "sending" | "receipt";
  readonly lastDay: Day;
  readonly daysLeft: number;
}

const taskKeys = [
  "unit_and_serial",
  "coverage_window",
  "fault_and_remedy",
  "readings",
  "photos",
  "parts_and_labour",
] as const;
export type TaskKey = (typeof taskKeys)[number];

/** One of the six things a claim is made of. */
export interface ClaimTask {
  readonly key: TaskKey;
  readonly state: "in_place" | "missing" | "does_not_apply";
  /** What was found, in words. */
  readonly found: readonly string[];
  /** What would fix each thing that is missing; empty unless missing. */
  readonly fixes: readonly string[];
}

export interface BlockReason {
  readonly code:
    | "not_closed"
    | "outside_cause"
    | "no_fault_found"
    | "cause_not_determined"
    | "invalid_data"
    | "not_covered"
    | "needs_evidence"
    | "needs_local_law"
    | "evidence_contradicted"
    | "repeat_within_window"
    | "filing_window_over"
    | "other_currency"
    | "nothing_to_pay"
    | "policy_mismatch";
  readonly sentence: string;
}
