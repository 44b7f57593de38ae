import type { ProductType } from "@/lib/domain/product-type";
import type { WeekNumber } from "./weeks";

/** Everything that signals are computed from, as known at the end of one week. */
export interface SignalRecord {
  /** First week in which repairs are on record as a whole, and the last one that is over. */
  readonly firstWeek: WeekNumber;
  readonly lastWeek: WeekNumber;
  readonly models: readonly SignalModel[];
  readonly cohorts: readonly Cohort[];
  readonly jobs: readonly WeeklyJobs[];
  /** Chance that a job is on record so many weeks after the week of its call; the last entry holds for all later weeks. */
  readonly knownWithin: readonly number[];
}

export interface SignalModel {
  readonly modelId: number;
  readonly number: string;
  readonly maker: string;
  readonly productType: ProductType;
}

/** Units of one model and half-year of production that entered service in one week. */
export interface Cohort {
  /** Position in the record's models. */
  readonly model: number;
  /** Half-years since 1970; undefined where the register does not know when they were made. */
  readonly madeHalf: number | undefined;
  readonly inServiceWeek: WeekNumber;
  /** How many units came under observation (above 0) or left it (below 0) at the start of a week, in order of weeks. */
  readonly changes: readonly (readonly [week: WeekNumber, units: number])[];
}

/** Closed jobs that share all that signals look at. */
export interface WeeklyJobs {
  readonly model: number;
  readonly madeHalf: number | undefined;
  readonly inServiceWeek: WeekNumber;
  readonly failedWeek: WeekNumber;
  /** Week by whose end they were on record. */
  readonly knownWeek: WeekNumber;
  /** The component, where it failed itself; undefined for calls with another cause. */
  readonly failed: string | undefined;
  readonly symptom: string | undefined;
  /** Fault codes that the machine showed; absent where none was read. */
  readonly codes?: readonly string[] | undefined;
  readonly jobs: number;
}

/**
 * What a cell counts: failures of a component, or all closed jobs with one symptom, or in which one fault code was shown.
 * A code means something else at another maker, so it is compared among one maker's models only.
 */
export type WordKind = "component" | "fault_code" | "symptom";

export interface CellKey {
  readonly kind: WordKind;
  readonly word: string;
  readonly productType: ProductType;
  readonly maker: string;
  /** Undefined: all models of the maker. */
  readonly model: string | undefined;
  readonly madeHalf: number | undefined;
}

export function cellKeyText({ kind, word, productType, maker, model, madeHalf }: CellKey): string {
  return [kind, word, productType, maker, model ?? "", madeHalf ?? ""].join("\u001f");
}

/** Names a story in addresses and tables; stays the same while the cell that leads it changes. */
export function storyKey({ kind, word, productType, maker }: CellKey): string {
  return [...(kind === "component" ? [] : [kind]), word, productType, maker].join("~");
}

export function halfOfDay(year: number, month: number): number {
  return 2 * (year - 1970) + (month > 6 ? 1 : 0);
}
