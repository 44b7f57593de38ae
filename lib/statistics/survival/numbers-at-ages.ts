import { ageFlows, type LifeSource } from "./age-flows";

/**
 * The numbers to print under a survival chart: how many lives are still at risk, have failed, and were lost.
 * @param source  rows, columns or flows
 * @param ages    ages at which to count, 0 or more, any order
 * @returns one entry per asked age, in the asked order: `atRisk` entered before that age (or at age 0) and had not gone
 *          before it; `failed`, `lost` and `entered` count up to and including that age
 * @throws RangeError for an age below 0 or not finite
 * Checked: tests/statistics/survival/age-flows.test.ts, by the definition applied to each row.
 */
export function numbersAtAges(source: LifeSource, ages: readonly number[]): NumbersAtAge[] {
  const flows = ageFlows(source);
  return ages.map((age, i) => {
    if (!(age >= 0 && age < Number.POSITIVE_INFINITY)) {
      throw new RangeError(`ages[${i}] must be a finite age, 0 or more; it is ${age}`);
    }
    const entered = sumWhere(flows.ages, flows.entered, (at) => at <= age);
    const failed = sumWhere(flows.ages, flows.events, (at) => at <= age);
    const lost = sumWhere(flows.ages, flows.lost, (at) => at <= age);
    const arrived = sumWhere(flows.ages, flows.entered, (at) => at < age || at === 0);
    const gone =
      sumWhere(flows.ages, flows.events, (at) => at < age) + sumWhere(flows.ages, flows.lost, (at) => at < age);
    return { age, atRisk: arrived - gone, entered, failed, lost };
  });
}

export interface NumbersAtAge {
  readonly age: number;
  readonly atRisk: number;
  readonly entered: number;
  readonly failed: number;
  readonly lost: number;
}

function sumWhere(ages: Float64Array, counts: Float64Array, included: (age: number) => boolean): number {
  return ages.reduce((sum, age, i) => (included(age) ? sum + (counts[i] ?? 0) : sum), 0);
}
