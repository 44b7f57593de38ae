import type { WeibullLife } from "@/lib/statistics/life/weibull-posterior";

export interface FleetCourse {
  /** Components that run now, by age in months. */
  readonly running: Float64Array;
  /** Machines that come in a month, by their age then. */
  readonly coming: Float64Array;
  /** Chance that a machine leaves in a month. */
  readonly leaving: number;
  /** Wear of each coming month over an even one. */
  readonly wear: readonly number[];
}

/** A life as fleets are let go through it: cumulative hazard in the first month of age, and gained from each to the next. */
export interface LifeByMonth {
  readonly early: number;
  readonly gained: Float64Array;
}

/**
 * Means over each month of age, through which components are spread evenly: where failures come early, its middle would
 * not do.
 * @param ages months of age that are looked at
 */
export function lifeByMonth({ shape, rate }: WeibullLife, ages: number): LifeByMonth {
  const gained = new Float64Array(ages);
  const scaled = rate / (shape + 1);
  let [sum, mean] = [scaled, scaled];
  for (let age = 0; age < ages; age++) {
    const sumAfter = scaled * (age + 2) ** (shape + 1);
    const after = sumAfter - sum;
    gained[age] = after - mean;
    [sum, mean] = [sumAfter, after];
  }
  return { early: scaled, gained };
}

/** Months of age that a course of so many months needs. */
export function agesOf({ running, coming, wear }: FleetCourse): number {
  return Math.max(running.length, coming.length) + wear.length + 1;
}

/**
 * Failures expected in each coming month of a fleet whose component has this life: it ages, what fails begins anew,
 * machines come and leave.
 * @param life known for `agesOf` the course at least
 * Source: renewal of the replaced, Meeker & Escobar (1998), Statistical Methods for Reliability Data, chapter 12.
 * Checked: tests/forecast/fleet-course.test.ts, by hand and against machines followed one by one.
 */
export function expectedFailures(course: FleetCourse, { early, gained }: LifeByMonth): number[] {
  const { running, coming, leaving, wear } = course;
  const ages = agesOf(course);
  if (gained.length < ages) throw new RangeError(`life must be known for ${ages} months; it is for ${gained.length}`);
  const staying = 1 - leaving;
  let [now, next] = [new Float64Array(ages), new Float64Array(ages)];
  now.set(running);
  return wear.map((factor, month) => {
    let renewed = 0;
    const oldest = Math.min(ages - 2, Math.max(running.length, coming.length) + month);
    for (let age = 0; age <= oldest; age++) {
      const machines = now[age] ?? 0;
      const failing = machines * chanceOf(factor * (gained[age] ?? 0));
      renewed += failing;
      next[age + 1] = (machines - failing) * staying;
    }
    // What is renewed or new within the month has half of it before it.
    let failed = renewed * (1 + chanceOf(factor * early));
    next[0] = renewed * staying;
    for (let age = 0; age < coming.length; age++) {
      const machines = coming[age] ?? 0;
      if (machines === 0) continue;
      failed += machines * chanceOf(factor * (age === 0 ? early : (gained[age] ?? 0) / 2));
      next[age] = (next[age] ?? 0) + machines;
    }
    [now, next] = [next, now];
    return failed;
  });
}

/** 1 − e^−hazard; the series is quicker and exact enough where the hazard is small. */
function chanceOf(hazard: number): number {
  return hazard < 0.02 ? hazard * (1 - hazard * (0.5 - hazard / 6)) : -Math.expm1(-hazard);
}
