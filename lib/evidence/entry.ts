// The rules for one component and the ways it fails: what must be checked, what shows the failure, what speaks against
// it, what puts the cause outside the part, and what a claim must contain.
import type { Cause } from "@/lib/domain/cause";
import type { PhotoSubject } from "@/lib/domain/job";
import type { ProductType } from "@/lib/domain/product-type";
import type { SourceMark } from "@/lib/domain/reading";
import type { Condition } from "./condition";
import type { SourceKey } from "./entries/sources";

export interface EvidenceEntry {
  readonly id: string;
  readonly productType: ProductType;
  readonly component: string;
  /** The failure in words, and the catalogue's keys that it covers. */
  readonly failure: string;
  readonly failureModes: readonly string[];
  readonly failureClass: string;
  readonly symptoms: readonly string[];
  /** Required checks in their order; where one step names several, any of them will do. */
  readonly steps: readonly (readonly [string, ...string[]])[];
  /** What shows that this part failed in this way. */
  readonly proof: Condition;
  readonly contradictedBy: readonly Against[];
  readonly notCoveredIf: readonly Exclusion[];
  readonly minimumEvidence: readonly EvidenceNeed[];
  readonly sourceTag: string;
  readonly sources: readonly SourceKey[];
  readonly mark: SourceMark;
}

export interface Against {
  readonly text: string;
  readonly when: Condition;
  /** Failure modes that it speaks against; absent where it speaks against all of the entry's. */
  readonly onlyFor?: readonly string[];
}

export interface Exclusion {
  readonly text: string;
  readonly cause: Cause;
  readonly when: Condition;
}

export interface EvidenceNeed {
  readonly text: string;
  readonly need: Need;
}

export type Need =
  /** One of these photos. */
  | { readonly kind: "photo"; readonly subjects: readonly PhotoSubject[] }
  /** All of these photos. */
  | { readonly kind: "photos"; readonly subjects: readonly PhotoSubject[] }
  /** Readings that make the condition hold; `check` is the step whose item this is. */
  | { readonly kind: "reading"; readonly check: string; readonly when: Condition }
  /** Every measurement states its mode, unit, test points and, for ohms, whether the part was isolated. */
  | { readonly kind: "reading_log" }
  /** Applies only where a part was fitted. */
  | { readonly kind: "part_labels" }
  | { readonly kind: "part_invoice" }
  | { readonly kind: "authorization" };
