import type { CountedTerm } from "@/lib/calendar/term";

/** How amounts are set. All amounts are whole cents of the policy's currency. */
export interface PaySchedule {
  readonly labour: LabourPay;
  readonly trip: TripPay;
  /** Parts are paid at invoice cost plus handling. */
  readonly parts: { readonly handlingPercent: number; readonly capCents?: number | undefined };
  /** A visit that ended without a repair. */
  readonly diagnosis: { readonly kind: "none" } | { readonly kind: "flat"; readonly cents: number };
  readonly claimCapCents?: number | undefined;
}

export type LabourPay =
  | { readonly kind: "schedule"; readonly jobClasses: readonly LabourClass[]; readonly otherwiseCents: number }
  | {
      readonly kind: "hours";
      readonly centsPerHour: number;
      readonly entries: readonly LabourHours[];
      readonly otherwiseHours: number;
      readonly capHours?: number | undefined;
    }
  /** What the job charged, up to the cap. */
  | { readonly kind: "cost"; readonly capCents?: number | undefined };

/** Flat pay for repairs of these components: minor, major, sealed system. */
export interface LabourClass {
  readonly name: string;
  readonly components: readonly string[];
  readonly cents: number;
}

export interface LabourHours {
  readonly component: string;
  readonly hours: number;
}

export type TripPay =
  | { readonly kind: "included" }
  | { readonly kind: "flat"; readonly cents: number }
  | { readonly kind: "cost"; readonly capCents?: number | undefined }
  /** By the mile beyond a radius within which the trip is included. Rates go below a cent. */
  | {
      readonly kind: "per_mile";
      readonly centsPerMile: number;
      readonly includedMiles: number;
      readonly capCents?: number | undefined;
    };

/** Repairs that need the payer's number beforehand. */
export interface AuthorizationRule {
  readonly partsOverCents?: number | undefined;
  readonly claimOverCents?: number | undefined;
  readonly components: readonly string[];
  readonly withoutProofOfPurchase: boolean;
  /** Components of which a second one on the same unit needs a number. */
  readonly secondOf?: readonly string[] | undefined;
  /** A visit that ended without a repair needs a number. */
  readonly diagnosisOnly?: boolean | undefined;
  /** How long a number stays good after the day it was given. */
  readonly validFor?: CountedTerm | undefined;
}
