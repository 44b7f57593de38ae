// Coverage terms as data: one dated version of what one payer pays. Stored as a JSON document, so it holds only text,
// numbers and lists; amounts are whole cents of the policy's one currency. Parsed by lib/intake/parse-policy.ts.
import type { Day } from "@/lib/calendar/day";
import type { AnchorDay, CountedTerm } from "@/lib/calendar/term";
import type { Cause } from "./cause";
import type { PayerKind } from "./job";
import type { Currency } from "./money";
import type { Campaign, SerialRange } from "./policy-campaign";
import type { PolicyClocks } from "./policy-clocks";
import type { AuthorizationRule, PaySchedule } from "./policy-pay";
import type { DecisiveEvent, StartRule } from "./policy-start";
import type { Cap, ComponentClass, CoverTerm, RegistrationRule, ReplacementPartRule, UseRule } from "./policy-terms";
import type { ProductType } from "./product-type";
import type { SourceMark } from "./reading";

export interface Policy {
  /** The same in every version. */
  readonly key: string;
  readonly version: number;
  readonly name: string;
  /** Maker whose units it covers; absent where it covers any maker (contracts, the shop's own guarantee). */
  readonly maker?: string | undefined;
  readonly payer: PolicyPayer;
  readonly appliesTo: PolicyScope;
  /** Sale dates it governs, both ends included; no end where absent. */
  readonly effectiveFrom: Day;
  readonly effectiveTo?: Day | undefined;
  readonly sourceDocument: string;
  readonly sourceMark: SourceMark;
  readonly approvedBy: string;
  readonly approvedOn: Day;
  readonly currency: Currency;

  readonly start: StartRule;
  readonly anchorDay: AnchorDay;
  readonly decisiveEvent: DecisiveEvent;
  readonly classes: readonly ComponentClass[];
  readonly terms: readonly CoverTerm[];
  readonly caps: readonly Cap[];
  readonly registration?: RegistrationRule | undefined;
  /** What the paper calls itself in the United States; a full warranty may neither stop at a transfer nor ask to be registered. */
  readonly designation?: WarrantyDesignation | undefined;
  readonly transfer: TransferRule;
  readonly use: UseRule;
  /** ISO 3166 codes; US takes in US-CA. Any territory where the list is empty. */
  readonly territories: readonly string[];
  readonly replacementPart: ReplacementPartRule;
  readonly replacementUnit: "remainder_of_original" | "new_term";
  /** Whether the term stands still while the unit is out for a repair under it. Local law may say so where this does not. */
  readonly tolling: boolean;
  readonly excludedCauses: readonly Cause[];
  /** Component keys that the policy calls consumable or leaves out by name. */
  readonly excludedComponents: readonly string[];
  readonly campaigns: readonly Campaign[];
  readonly contract?: ContractRule | undefined;
  readonly repeat?: RepeatRule | undefined;
  readonly goodwill?: GoodwillRule | undefined;
  readonly clocks: PolicyClocks;
  readonly pay: PaySchedule;
  readonly authorization: AuthorizationRule;
}

/** Source: 15 USC 2303, 2304(a) and (b); 16 CFR 700.6, 700.7. */
export const warrantyDesignations = ["full", "limited"] as const;
export type WarrantyDesignation = (typeof warrantyDesignations)[number];

export interface PolicyPayer {
  readonly kind: PayerKind;
  readonly name: string;
}

/** Empty lists do not narrow. A model matches by its beginning, so that suffixes need no listing. */
export interface PolicyScope {
  readonly productTypes: readonly ProductType[];
  readonly models: readonly string[];
  readonly serials: readonly SerialRange[];
}

export type TransferRule =
  | { readonly kind: "follows_unit" }
  | { readonly kind: "original_purchaser_only" }
  | { readonly kind: "register_within"; readonly within: CountedTerm };

/** Service contract: what is bought apart from the maker's cover. */
export interface ContractRule {
  readonly type: "extended" | "home_service";
  /** First days without cover, counted from the day the contract was sold, that day excluded. */
  readonly waiting?: CountedTerm | undefined;
  readonly deductibleCents?: number | undefined;
  readonly perClaimLimitCents?: number | undefined;
}

/** Within this time of the previous completion the same trouble is the servicer's cost. */
export interface RepeatRule {
  readonly within: CountedTerm;
  readonly same: "component" | "complaint" | "component_or_complaint";
}

/** A payment outside the terms. It is never shown as cover. */
export interface GoodwillRule {
  readonly authorizationRequired: boolean;
  /** How long past the last covered day it may be asked for; no limit where absent. */
  readonly within?: CountedTerm | undefined;
}
