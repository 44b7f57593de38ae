import { chiSquareUpperTail } from "../chi-square-quantile";
import { type AgeFlows, ageFlows, type LifeSource } from "./age-flows";

/**
 * `log-rank` gives every failure the same weight and is best when one hazard is a multiple of the other; `gehan` weighs by
 * the number at risk and `peto` by the pooled survival, so both look more at early ages.
 */
export type ComparisonWeights = "log-rank" | "gehan" | "peto";

/**
 * Do two groups live equally long? Compares the failures of the first with what it would have had if both shared one
 * hazard at every age, with late entry and right censoring.
 * @param weights which ages count more; no default
 * @returns observed and expected (weighted) failures of the first group, the variance of their difference, chi-square on one
 *          degree of freedom and its probability; `not-comparable` when no failure happened with both groups at risk
 * @throws RangeError for rows that cannot be
 * Source: Mantel (1966); Peto and Peto (1972), JRSS A 135, 185-207; Gehan (1965), Biometrika 52, 203-223.
 * Checked: tests/statistics/survival/compare-curves.test.ts, against R survdiff and by hand.
 */
export function compareCurves(
  first: LifeSource,
  second: LifeSource,
  { weights }: { readonly weights: ComparisonWeights },
): CurveComparison {
  const groups = [ageFlows(first), ageFlows(second)] as const;
  const moments = pooledMoments(groups);
  const sums = { observed: 0, expected: 0, variance: 0 };
  let pooledSurvival = 1;
  for (const { atRiskFirst, atRisk, eventsFirst, events } of moments) {
    const weight = weights === "gehan" ? atRisk : weights === "peto" ? pooledSurvival : 1;
    const share = atRiskFirst / atRisk;
    sums.observed += weight * eventsFirst;
    sums.expected += weight * events * share;
    if (atRisk > 1) {
      sums.variance += (weight * weight * events * share * (1 - share) * (atRisk - events)) / (atRisk - 1);
    }
    pooledSurvival *= 1 - events / atRisk;
  }
  if (!(sums.variance > 0)) return { kind: "not-comparable" };
  const chiSquare = (sums.observed - sums.expected) ** 2 / sums.variance;
  return { kind: "compared", ...sums, chiSquare, probability: chiSquareUpperTail(chiSquare, 1) };
}

export type CurveComparison =
  | {
      readonly kind: "compared";
      readonly observed: number;
      readonly expected: number;
      readonly variance: number;
      readonly chiSquare: number;
      readonly probability: number;
    }
  | { readonly kind: "not-comparable" };

interface Moment {
  readonly atRiskFirst: number;
  readonly atRisk: number;
  readonly eventsFirst: number;
  readonly events: number;
}

/** Numbers at risk in both groups at every age at which either has a failure. */
function pooledMoments([first, second]: readonly [AgeFlows, AgeFlows]): Moment[] {
  const ages = Float64Array.from(new Set([...first.ages, ...second.ages])).sort();
  const [one, two] = [walker(first), walker(second)];
  const moments: Moment[] = [];
  for (const age of ages) {
    const [a, b] = [one(age), two(age)];
    if (a.events + b.events === 0) continue;
    moments.push({
      atRiskFirst: a.atRisk,
      atRisk: a.atRisk + b.atRisk,
      eventsFirst: a.events,
      events: a.events + b.events,
    });
  }
  return moments;
}

/** Steps through the flows as ages ascend, saying who is at risk and who fails at each. */
function walker({ ages, entered, events, lost }: AgeFlows): (age: number) => { atRisk: number; events: number } {
  let next = 0;
  let watched = 0;
  return (age) => {
    if (ages[next] !== age) return { atRisk: watched, events: 0 };
    const arriving = entered[next] ?? 0;
    const failing = events[next] ?? 0;
    const atRisk = age === 0 ? watched + arriving : watched;
    watched += arriving - failing - (lost[next] ?? 0);
    next++;
    return { atRisk, events: failing };
  };
}
