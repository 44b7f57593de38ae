// What coverage looks at on one job, whatever it was read from. Facts may be ranges, unreadable or missing; a guess is
// never one of them.
import type { Day } from "@/lib/calendar/day";
import type { DayRange } from "@/lib/calendar/day-range";
import type { Cause } from "@/lib/domain/cause";
import type { Contract } from "@/lib/domain/contract";
import type { ProductType } from "@/lib/domain/product-type";
import type { UnitUse } from "@/lib/domain/unit";
import type { DataProblem } from "./coverage-decision";

export interface CoverageFacts {
  readonly unit: UnitFacts;
  readonly reported: Day;
  /** False where no request date was recorded and the first visit or completion stands in for it. */
  readonly reportedIsRecorded: boolean;
  readonly firstVisit: Day | undefined;
  readonly completed: Day | undefined;
  readonly component: string | undefined;
  readonly symptom: string | undefined;
  readonly cause: Cause;
  /** Work without a part (door, level, calibration) and damage to looks have terms of their own. */
  readonly kind: "repair" | "adjustment" | "cosmetic";
  readonly authorizationNumber: string | undefined;
  readonly contracts: readonly Contract[];
  /** The failed part had itself been fitted under the policy on this day. */
  readonly replacedPartFittedOn: Day | undefined;
  readonly previousRepairOn: Day | undefined;
  /** Spans during which the unit was out for a repair under cover, both days counted. */
  readonly outForRepair: readonly RepairSpan[];
}

export interface UnitFacts {
  readonly maker: string;
  readonly model: string;
  readonly productType: ProductType;
  readonly serial: string | undefined;
  readonly serialRemoved: boolean;
  readonly use: UnitUse;
  readonly territory: string | undefined;
  readonly dates: UnitDates;
  readonly owner: OwnerFacts;
  /** Day it was delivered in exchange for another unit, whose sale date this one then carries. */
  readonly exchangedOn: Day | undefined;
}

export interface UnitDates {
  readonly manufacture?: DatedFact | undefined;
  readonly shipped?: DatedFact | undefined;
  readonly purchase?: DatedFact | undefined;
  readonly delivery?: DatedFact | undefined;
  readonly installation?: DatedFact | undefined;
  readonly occupancy?: DatedFact | undefined;
  readonly first_use?: DatedFact | undefined;
  readonly registration?: DatedFact | undefined;
}
export type UnitDateName = keyof UnitDates;

export type DatedFact =
  | {
      readonly kind: "known";
      readonly on: DayRange;
      readonly precision: Precision;
      readonly seenIn: string | undefined;
    }
  /** A value that stands for "unknown", such as 1 January 1900. */
  | { readonly kind: "placeholder"; readonly raw: string }
  | {
      readonly kind: "wrong";
      readonly raw: string;
      readonly problem: Extract<DataProblem, "no_such_date" | "unreadable_date">;
    };

/** Two orders of day and month leave two days; a month leaves all of its days. */
export type Precision = "day" | "month" | "two_readings";

export interface OwnerFacts {
  /** 1 for the first buyer. */
  readonly number: number;
  readonly acquiredOn: Day | undefined;
  readonly transferRegisteredOn: Day | undefined;
}

/** From hand-over, or from the call where the repair is done at home, up to and including return or completion. */
export interface RepairSpan {
  readonly from: Day;
  readonly until: Day;
  /** Whether it was for the trouble that this job is about. */
  readonly sameTrouble?: boolean;
}
