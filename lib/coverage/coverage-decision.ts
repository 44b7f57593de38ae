// What the coverage room says about one job: who pays each item, by which rule, from which day to which, and why the
// other answers lost. Plain values, so that an old claim keeps the decision it was filed on.
import type { Day } from "@/lib/calendar/day";
import type { DayRange, LastDayRange } from "@/lib/calendar/day-range";
import type { AnchorDay, LastDay, Term } from "@/lib/calendar/term";
import type { PayerKind } from "@/lib/domain/job";
import type { PayItem } from "@/lib/domain/pay-item";
import type { DecisiveEvent, StartEvent } from "@/lib/domain/policy-start";
import type { StatutoryNotice } from "./statutory-notice";

export interface CoverageDecision extends CoverageAnswer {
  /** Every rule in the order it was looked at, for every policy. */
  readonly looked: readonly RuleLook[];
}

export interface CoverageAnswer {
  /** The best that any pay item got. */
  readonly verdict: CoverageVerdict;
  readonly items: Readonly<Record<PayItem, ItemDecision>>;
  readonly decisive: { readonly event: DecisiveEvent; readonly on: Day } | undefined;
  /** Policies and campaigns that were tried and did not win any pay item. */
  readonly lost: readonly LostAlternative[];
  /** Days on which the maker's cover and a contract both run; the maker is primary on them. */
  readonly sharedDays: DayRange | undefined;
  /** Payment that can be asked for outside the terms; never cover. */
  readonly goodwill: GoodwillChance;
  readonly statutory: StatutoryNotice;
}

export type CoverageVerdict = ItemDecision["verdict"];

export type ItemDecision =
  | { readonly verdict: "covered"; readonly by: CoverSource; readonly window: CoverWindow; readonly boundary: Boundary }
  | {
      readonly verdict: "not_covered";
      readonly reason: NotCoveredReason;
      readonly by: CoverSource | undefined;
      readonly window: CoverWindow | undefined;
      readonly boundary: Boundary;
    }
  | {
      readonly verdict: "needs_evidence";
      readonly document: ProofDocument;
      readonly reason: EvidenceReason;
      readonly by: CoverSource | undefined;
      readonly window: CoverWindow | undefined;
    }
  | { readonly verdict: "needs_local_law"; readonly reason: string }
  | { readonly verdict: "invalid_data"; readonly problem: DataProblem };

/** The policy version, or the campaign in it, that decided. */
export interface CoverSource {
  readonly policy: string;
  /** 0 where a contract names a plan of which no version is on file. */
  readonly version: number;
  readonly policyName: string;
  readonly payerKind: PayerKind;
  readonly payerName: string;
  /** Key of the campaign in the policy, and what people call it. */
  readonly campaign: string | undefined;
  readonly campaignName: string | undefined;
  /** Number of the service contract, where one pays. */
  readonly contract?: string | undefined;
}

/** First and last covered day with the sum that gave them. Ranges where the start is known only as one. */
export interface CoverWindow {
  /** Undefined for a campaign that names no first day: it runs at any age. */
  readonly start: StartFound | undefined;
  readonly first: DayRange | undefined;
  readonly last: LastDayRange;
  /** Undefined for a campaign: its last day is written, not counted. */
  readonly term: Term | undefined;
  readonly anchorDay: AnchorDay;
  /** Every end that was compared, first the plain one; `last` is the one that governs. */
  readonly ends: readonly EndConsidered[];
}

export interface StartFound {
  readonly event: StartEvent | "replacement_part" | "campaign" | "exchange" | "contract_paper";
  readonly on: DayRange;
  /** How well it is known; two readings are a date whose order of day and month is not settled. */
  readonly precision: "day" | "month" | "two_readings";
  /** Paper that shows it, where one is on file. */
  readonly seenIn: string | undefined;
  readonly isFallback: boolean;
  /** Local law may move a start (no earlier than delivery). */
  readonly movedBy: "statute" | undefined;
}

export interface EndConsidered {
  readonly rule:
    | "term"
    | "cap"
    | "replacement_part"
    | "tolling"
    | "not_remedied"
    | "registration"
    | "use"
    | "campaign"
    | "contract_paper";
  readonly from: DayRange;
  readonly term: Term | undefined;
  readonly last: LastDayRange;
  /** Days added while the unit was out for repair. */
  readonly addedDays: number | undefined;
}

/** The decisive day is the last covered day or the day after it: the wording decides, so show it. */
export type Boundary =
  | { readonly kind: "none" }
  | { readonly kind: "last_day" | "day_after"; readonly lastDay: Day; readonly underOtherCounting: LastDay };

export type NotCoveredReason =
  | "term_ended"
  | "not_started"
  | "waiting_period"
  | "item_not_paid"
  | "component_not_in_terms"
  | "cause_excluded"
  | "component_excluded"
  | "use_excluded"
  | "territory_excluded"
  | "transfer_excluded"
  | "contract_cancelled"
  | "plan_not_for_unit"
  | "outside_campaign"
  | "no_policy";

export type EvidenceReason =
  | "start_unknown"
  | "ends_differ"
  | "placeholder_date"
  | "ambiguous_date"
  | "purchase_equals_job_date"
  | "serial_unknown"
  | "component_unknown"
  | "cause_unknown"
  | "territory_unknown"
  | "transfer_date_unknown"
  | "transfer_can_be_registered"
  | "registration_unsure"
  | "decisive_day_unknown"
  | "contract_terms_unknown";

export const proofDocuments = {
  proof_of_purchase: "Proof of purchase",
  delivery_note: "Delivery note",
  installation_record: "Installation record",
  closing_paper: "Closing paper or final walk-through",
  registration_record: "Registration record",
  transfer_record: "Transfer record",
  contract: "Service contract",
  visit_record: "Record of the visit",
  address_record: "Service address",
  plate_photo: "Photo of the rating plate",
  diagnosis: "Technician's diagnosis",
} as const;
export type ProofDocument = keyof typeof proofDocuments;

export type DataProblem =
  | "no_such_date"
  | "unreadable_date"
  | "purchase_before_manufacture"
  | "delivery_before_manufacture"
  | "installation_before_manufacture"
  | "shipped_before_manufacture"
  | "registration_before_manufacture"
  | "reported_before_manufacture"
  | "reported_before_purchase"
  | "visited_before_reported"
  | "completed_before_visited"
  | "completed_before_reported"
  | "acquired_before_purchase"
  | "transfer_registered_before_acquired"
  | "exchanged_before_purchase"
  | "repair_span_reversed"
  | "contract_paper_reversed"
  | "serial_removed";

/** One rule, what it looked at and what it gave. Text is made by describe-coverage.ts. */
export interface RuleLook {
  readonly step: RuleStep;
  readonly policy: string | undefined;
  readonly item: PayItem | undefined;
  readonly outcome: "passed" | "stopped" | "chosen" | "not_applicable" | "open";
  /** Reason or fact in one key, such as term_ended. */
  readonly gave: string;
  readonly window: CoverWindow | undefined;
  /** Last day of the rule's own clock, such as the day by which a transfer had to be registered. */
  readonly deadline: Day | undefined;
}

/** In the order in which they are asked. */
const ruleSteps = [
  "data_sane",
  "campaign",
  "start",
  "registration",
  "term",
  "use",
  "territory",
  "transfer",
  "exclusion",
  "payer_order",
  "ends_agree",
  "boundary",
  "statute",
] as const;
export type RuleStep = (typeof ruleSteps)[number];

export interface LostAlternative {
  readonly source: CoverSource;
  readonly reason: NotCoveredReason | EvidenceReason | "another_payer_first";
  readonly window: CoverWindow | undefined;
}

export type GoodwillChance =
  | { readonly kind: "none" }
  | { readonly kind: "authorized"; readonly source: CoverSource; readonly authorizationNumber: string }
  | { readonly kind: "needs_authorization" | "may_be_asked"; readonly source: CoverSource };
