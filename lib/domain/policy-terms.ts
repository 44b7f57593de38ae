import type { AnchorDay, CountedTerm, Term } from "@/lib/calendar/term";
import type { PayItem } from "./pay-item";
import type { StartEvent, StartPoint } from "./policy-start";

/** A named list of component keys. Membership is a list in the policy, never a judgement. */
export interface ComponentClass {
  readonly key: string;
  readonly name: string;
  readonly members: readonly string[];
}

/** One line of the terms: what it covers, which pay items, for how long. */
export interface CoverTerm {
  readonly covers: CoverSubject;
  readonly pays: readonly PayItem[];
  readonly term: Term;
  /** Start and counting where this line has its own, such as cosmetic damage from delivery. */
  readonly from?: StartPoint | undefined;
  readonly anchorDay?: AnchorDay | undefined;
}

export type CoverSubject =
  | { readonly kind: "whole_unit" }
  | { readonly kind: "class"; readonly class: string }
  | { readonly kind: "adjustment" }
  | { readonly kind: "cosmetic" };

/** A second limit from another day; the earlier end governs. */
export interface Cap {
  readonly from: StartEvent;
  readonly term: CountedTerm;
}

/** Whole-unit terms depend on registering in time. */
export interface RegistrationRule {
  readonly within: CountedTerm;
  readonly termIfRegistered: Term;
  readonly termOtherwise: Term;
}

export type UseRule =
  | { readonly kind: "any" }
  | { readonly kind: "household_only" }
  /** Commercial use is covered for this shorter time. */
  | { readonly kind: "commercial_term"; readonly term: CountedTerm; readonly pays: readonly PayItem[] };

/** Cover of a part that was fitted under this cover and has failed again. */
export type ReplacementPartRule =
  | { readonly kind: "remainder" }
  | {
      readonly kind: "own_term";
      readonly term: CountedTerm;
      readonly pays: readonly PayItem[];
      readonly combine: "later_of_with_remainder" | "own_term_only";
    };
