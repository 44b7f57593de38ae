// What a claim needs to show that the part itself failed, what the job has, and what is missing or speaks against it.
// This file holds the result; the rules are in entries/, the checks in checks.ts, the judge in check-evidence.ts.
import type { Cause } from "@/lib/domain/cause";
import type { SourceMark } from "@/lib/domain/reading";

export const evidenceKinds = ["proven", "missing", "contradicted", "outside_cause", "no_entry"] as const;
export type EvidenceKind = (typeof evidenceKinds)[number];

/** The outcome for one job. `no_entry`: no rules for this component, so nothing is claimed about its proof. */
export interface EvidenceCheck {
  readonly kind: EvidenceKind;
  /** Id of the entry that was used, such as FL-PUMP-OPEN; undefined for `no_entry`. */
  readonly entryId: string | undefined;
  readonly items: readonly EvidenceItem[];
  readonly contradictions: readonly Contradiction[];
  /** Findings that put the cause outside the part. */
  readonly outside: readonly OutsideFinding[];
  /** Words of the story that point to an exclusion: a warning, the text stays as written. */
  readonly warnings: readonly WordWarning[];
  /** One or two sentences that a person can act on. */
  readonly verdict: string;
}

export const itemStates = ["in_place", "missing", "does_not_apply"] as const;
export type ItemState = (typeof itemStates)[number];

export interface EvidenceItem {
  readonly key: string;
  readonly label: string;
  readonly state: ItemState;
  /** Where in the job it was found; empty unless in place. */
  readonly foundIn: readonly EvidencePlace[];
  /** What to do where it is missing. */
  readonly whatWouldFixIt: string;
  /** Whether a missing item can still be had after the repair. */
  readonly canStillBeHad: boolean;
  readonly mark: SourceMark;
}

export type EvidencePlace =
  | { readonly kind: "reading"; readonly number: number }
  | { readonly kind: "attachment"; readonly id: string }
  | { readonly kind: "part_line"; readonly line: number }
  | { readonly kind: "job"; readonly field: "authorizationNumber" | "cause" };

export interface Contradiction {
  /** Number of the reading that speaks against the failure; undefined where the job's own cause does. */
  readonly by: number | undefined;
  readonly why: string;
}

export interface OutsideFinding {
  readonly cause: Cause;
  readonly why: string;
  readonly foundIn: readonly EvidencePlace[];
}

export interface WordWarning {
  readonly word: string;
  readonly field: "complaint" | "causeNote" | "correction";
  /** The exclusion that a payer may read into the word. */
  readonly pointsTo: Cause;
}
