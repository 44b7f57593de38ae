// What can happen to a claim, from draft to money. Events are only ever added; where a claim stands follows from them.
import type { Day } from "@/lib/calendar/day";
import type { ClaimItem } from "../claim";
import type { RefusalReason } from "./refusal-reason";

export type ClaimAct =
  | { readonly what: "built" }
  | { readonly what: "withdrawn"; readonly reason: string }
  /** First filing, or filing anew after a correction; what went out is locked under this hash. */
  | { readonly what: "sent"; readonly on: Day; readonly sha256: string; readonly lines: readonly AskedLine[] }
  | { readonly what: "received"; readonly on: Day; readonly payerReference: string | undefined }
  | { readonly what: "answered"; readonly on: Day; readonly answer: ClaimAnswer }
  | { readonly what: "paid"; readonly on: Day; readonly reference: string; readonly lines: readonly LineAmount[] }
  /** Asks the payer to look again at what it refused or cut. */
  | { readonly what: "appealed"; readonly on: Day; readonly ground: string }
  | { readonly what: "written off"; readonly on: Day; readonly reason: string }
  | { readonly what: "audit opened"; readonly on: Day; readonly reference: string }
  | { readonly what: "audit upheld"; readonly on: Day }
  | {
      readonly what: "clawed back";
      readonly on: Day;
      readonly reference: string;
      readonly reason: RefusalReason;
      readonly payerText: string;
      readonly lines: readonly LineAmount[];
    }
  /** Takes an answer or a payment back that was entered by mistake; the event stays, and counts no more. */
  | { readonly what: "undone"; readonly event: number; readonly reason: string };

export type ActName = ClaimAct["what"];

export interface LineAmount {
  readonly line: number;
  readonly cents: number;
}

export interface AskedLine extends LineAmount {
  readonly item: ClaimItem;
}

export type ClaimAnswer =
  /** Approved line by line; a line may be approved for less than was asked. */
  | {
      readonly kind: "approved";
      readonly lines: readonly LineAmount[];
      readonly reason: RefusalReason | undefined;
      readonly payerText: string;
    }
  | { readonly kind: "needs correction"; readonly reason: RefusalReason; readonly payerText: string }
  | { readonly kind: "rejected"; readonly reason: RefusalReason; readonly payerText: string };

/** An act with when and by whom it was entered. */
export interface ClaimEvent {
  /** Counts from 1 within the claim; order goes by it, never by the clock. */
  readonly number: number;
  /** Instant, ISO text. */
  readonly at: string;
  readonly by: string;
  readonly note: string;
  readonly act: ClaimAct;
}
