import { normalCdf } from "../normal";
import { type RecurrenceTimeline, recurrenceTimeline } from "./recurrence-timeline";
import type { UnitHistory } from "./unit-history";

/**
 * Do the units of two groups fail equally often? One test over all ages, right also when events of a unit hang together.
 * The weighted difference of the two mean cumulative functions, each age weighed by how many units both groups have there.
 * @returns z above 0 when the first group fails more often, its two-sided probability; `not-comparable` when no event happened while both
 *          groups were watched
 * @throws RangeError for histories that cannot be
 * Source: Cook, Lawless and Nadeau (1996), Biometrics 52, 557-571 (robust variance, group by group).
 * Checked: tests/statistics/recurrence/compare-recurrence.test.ts, by the definition.
 */
export function compareRecurrence(first: readonly UnitHistory[], second: readonly UnitHistory[]): RecurrenceComparison {
  const [one, two] = [walkedGroup(first), walkedGroup(second)];
  const ages = Float64Array.from(new Set([...one.ages, ...two.ages])).sort();
  const weights = ages.map((age) => {
    const [a, b] = [one.atRiskAt(age), two.atRiskAt(age)];
    return a + b === 0 ? 0 : (a * b) / (a + b);
  });
  const weightAt = new Map(Array.from(ages, (age, i) => [age, weights[i] ?? 0]));
  const [a, b] = [one.weighted(weightAt), two.weighted(weightAt)];
  const variance = a.variance + b.variance;
  if (!(variance > 0)) return { kind: "not-comparable" };
  const z = (a.total - b.total) / Math.sqrt(variance);
  return { kind: "compared", z, probability: 2 * normalCdf(-Math.abs(z)) };
}

export type RecurrenceComparison =
  | { readonly kind: "compared"; readonly z: number; readonly probability: number }
  | { readonly kind: "not-comparable" };

function walkedGroup(histories: readonly UnitHistory[]) {
  const timeline = recurrenceTimeline(histories);
  const known = histories.filter(({ count }) => count > 0);
  return {
    ages: timeline.moments.map((moment) => moment.age),
    atRiskAt: (age: number) =>
      known.reduce(
        (sum, { entry, exit, count }) => ((entry < age || entry === 0) && age <= exit ? sum + count : sum),
        0,
      ),
    weighted: (weightAt: ReadonlyMap<number, number>) => weightedTotal(timeline, weightAt),
  };
}

/** Σ weight × mean increment, and the sum over units of the squared weighted residuals. */
function weightedTotal(
  { moments, histories }: RecurrenceTimeline,
  weightAt: ReadonlyMap<number, number>,
): { total: number; variance: number } {
  const gained = new Float64Array(histories);
  const shareBefore = new Float64Array(moments.length + 1);
  let total = 0;
  let variance = 0;
  moments.forEach(({ age, atRisk, size, hits, leaving }, moment) => {
    const weight = (weightAt.get(age) ?? 0) / atRisk;
    total += weight * size;
    for (const hit of hits) gained[hit.history] = (gained[hit.history] ?? 0) + weight * hit.size;
    const share = (shareBefore[moment] ?? 0) + (weight * size) / atRisk;
    shareBefore[moment + 1] = share;
    for (const { history, count, firstMoment } of leaving) {
      variance += count * ((gained[history] ?? 0) - (share - (shareBefore[firstMoment] ?? 0))) ** 2;
    }
  });
  return { total, variance };
}
