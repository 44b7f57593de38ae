import type { DayNumber } from "@/lib/calendar/day-number";
import type { Cause } from "@/lib/domain/cause";
import type { ProductType } from "@/lib/domain/product-type";

export const dimensions = ["component", "model", "maker", "type", "age", "symptom", "cause", "payer", "year"] as const;
export type Dimension = (typeof dimensions)[number];

/** `failures`: the component itself failed. `calls`: every closed job. A cause: jobs closed with just that cause. */
export type Counting = "failures" | "calls" | Cause;

/** One question about rates. Nothing that changes the answer has a default here; the page picks, shows and addresses it. */
export interface RateQuestion {
  /** One or two ways to group. */
  readonly by: readonly [Dimension] | readonly [Dimension, Dimension];
  readonly counting: Counting;
  /** Calendar days looked at: from (undefined: as far back as records go) up to but not including until. */
  readonly from: DayNumber | undefined;
  readonly until: DayNumber;
  readonly where: RateFilter;
  /** Two-sided level of the limits, in (0, 1). */
  readonly level: number;
}

export interface RateFilter {
  readonly maker?: string | undefined;
  readonly model?: string | undefined;
  readonly productType?: ProductType | undefined;
  readonly component?: string | undefined;
  readonly symptom?: string | undefined;
  /** Key of one age band. */
  readonly age?: AgeBandKey | undefined;
}

/** Months of 30.4375 days, for display only; coverage counts calendar months. */
export const daysPerMonth = 30.4375;
export const daysPerYear = 365.25;

export type AgeBandKey = "0-12" | "12-24" | "24-36" | "36-60" | "60-96" | "96-";

export interface AgeBand {
  readonly key: AgeBandKey;
  readonly name: string;
  /** Ages in whole days: from `fromDay` up to but not including `untilDay`. */
  readonly fromDay: number;
  readonly untilDay: number;
}

export const ageBands: readonly AgeBand[] = [
  band("0-12", "First year", 0, 12),
  band("12-24", "Second year", 12, 24),
  band("24-36", "Third year", 24, 36),
  band("36-60", "Years 4 and 5", 36, 60),
  band("60-96", "Years 6 to 8", 60, 96),
  band("96-", "Over 8 years", 96, Number.POSITIVE_INFINITY),
];

function band(key: AgeBandKey, name: string, fromMonth: number, untilMonth: number): AgeBand {
  return { key, name, fromDay: Math.ceil(fromMonth * daysPerMonth), untilDay: Math.ceil(untilMonth * daysPerMonth) };
}

/** The band that an age in whole days falls in. @throws RangeError for an age below 0. */
export function ageBandOf(ageDays: number): AgeBand {
  const found = ageBands.find((candidate) => ageDays >= candidate.fromDay && ageDays < candidate.untilDay);
  if (found === undefined) throw new RangeError(`ageDays must be 0 or more; it is ${ageDays}`);
  return found;
}
