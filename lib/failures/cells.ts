// Failures over exposure: what the counts tables hold, and what is computed from them. Pure: no database, no clock.
import type { DayNumber } from "@/lib/calendar/day-number";
import type { Cause, CountedAs } from "@/lib/domain/cause";
import type { PayerKind } from "@/lib/domain/job";
import type { ProductType } from "@/lib/domain/product-type";

export interface ModelEntry {
  readonly modelId: number;
  readonly number: string;
  readonly maker: string;
  readonly productType: ProductType;
}

/** Units of one model that share the days bounding their observation. */
export interface UnitWindow {
  readonly modelId: number;
  readonly inServiceOn: DayNumber;
  readonly observedFrom: DayNumber;
  /** Undefined while the unit is still in service. */
  readonly retiredOn: DayNumber | undefined;
  readonly units: number;
}

/** Days that place a job in age; undefined where its unit carries no exposure. */
export interface JobPlace {
  readonly inServiceOn: DayNumber;
  readonly observedFrom: DayNumber;
  readonly retiredOn: DayNumber | undefined;
}

/** Jobs that share everything that rates look at. */
export interface JobCell {
  readonly modelId: number;
  readonly component: string | undefined;
  readonly symptom: string | undefined;
  readonly cause: Cause;
  readonly countedAs: Exclude<CountedAs, "nothing">;
  readonly place: JobPlace | undefined;
  readonly failedOn: DayNumber;
  /** The same unit's previous failure of this component; undefined on the first. */
  readonly previousFailedOn: DayNumber | undefined;
  readonly jobs: number;
  /** Known where it was asked for: the roll-ups do not hold it. */
  readonly payer?: PayerKind | undefined;
}

/** What tells which group a job belongs to. */
export type SortedJob = Omit<JobCell, "jobs" | "previousFailedOn">;

/** A job of a unit that has more than one: needed to know how failures bunch by unit. */
export interface RepeatedJob extends Omit<SortedJob, "place"> {
  readonly unitId: string;
  readonly place: JobPlace;
}

/** A word of the catalogue with the product types that it applies to: their unit-years are its exposure. */
export interface CountedWord {
  readonly key: string;
  readonly name: string;
  readonly productTypes: readonly ProductType[];
}

export interface ExposureCells {
  readonly models: readonly ModelEntry[];
  readonly components: readonly CountedWord[];
  readonly symptoms: readonly CountedWord[];
  readonly windows: readonly UnitWindow[];
  readonly jobs: readonly JobCell[];
  readonly repeated: readonly RepeatedJob[];
  /** Units that carry no exposure, by reason. */
  readonly unplaced: readonly { readonly modelId: number; readonly reason: UnplacedReason; readonly units: number }[];
}

export type UnplacedReason = "not_in_register" | "no_in_service_day" | "never_observed";
