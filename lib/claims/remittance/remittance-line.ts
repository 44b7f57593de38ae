import type { Day } from "@/lib/calendar/day";
import type { Currency } from "@/lib/domain/money";
import type { ClaimItem } from "../claim";
import type { LineAmount } from "../life/claim-act";
import type { LineStanding } from "../life/claim-standing";

/** One line of a payer's list of what it paid. Whatever the list does not say is undefined. */
export interface RemittanceLine {
  /** As a spreadsheet numbers it. */
  readonly row: number;
  /** Everything that may hold our claim or job number, or the payer's own, as it stands in the file. */
  readonly references: readonly string[];
  readonly serial: string | undefined;
  readonly completedOn: Day | undefined;
  /** What it pays for; undefined where one sum stands for the whole claim. */
  readonly item: ClaimItem | undefined;
  /** Whole cents; below 0 where the payer takes money back. */
  readonly paidCents: number;
  readonly currency: Currency;
  readonly payerText: string;
}

/** A claim that was sent and may still be paid or charged back. */
export interface AwaitedClaim {
  readonly claimNumber: string;
  readonly jobNumber: string;
  readonly payerReference: string | undefined;
  readonly serial: string | undefined;
  readonly completedOn: Day;
  readonly currency: Currency;
  readonly lines: readonly LineStanding[];
}

export type RemittanceMatch =
  | {
      readonly kind: "matched";
      readonly row: number;
      readonly by: MatchedBy;
      /** Only a sure match is posted without somebody's yes. */
      readonly confidence: "sure" | "likely";
      readonly reason: string;
      readonly shares: readonly ClaimShare[];
    }
  /** Waits in the tray for a person; nothing is posted. */
  | {
      readonly kind: "unmatched";
      readonly row: number;
      readonly reason: string;
      /** Claim numbers that come near. */
      readonly candidates: readonly string[];
    };

export type MatchedBy = "claim number" | "payer's reference" | "job number" | "serial, day and amount";

/** What of one line goes to one claim. */
export interface ClaimShare {
  readonly claimNumber: string;
  readonly lines: readonly LineAmount[];
  /** How the sum was split over the claim's lines, where the payer did not say. */
  readonly split: "as stated" | "pays in full" | "by what was asked";
}
