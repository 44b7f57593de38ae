import { gradeOf } from "@/lib/statistics/estimate-grade";
import type { GroupComparison } from "./compare-groups";

/** One of the fixed phrases, and the probability that it rests on. */
export interface ComparisonVerdict {
  readonly verdict: Verdict;
  /** Of a difference as large in either direction if there were none; undefined where nothing could be compared. */
  readonly probability: number | undefined;
  /** True where the same units fail again and again, so that the test by unit had to agree. */
  readonly byUnit: boolean;
}

export type Verdict =
  | "clearly above"
  | "probably above"
  | "no sign of a difference"
  | "probably below"
  | "clearly below"
  | "too few to judge";

/** Beyond the 95 % limits: probably; beyond the 99.8 % limits: clearly. */
export const probably = 0.05;
export const clearly = 0.002;

/**
 * Decided at like ages. Where failures bunch by unit, counts say more than they know, and the test that takes each unit
 * as one must agree: the larger of the two probabilities decides.
 */
export function comparisonVerdict(comparison: GroupComparison): ComparisonVerdict {
  const { likeAges, repeats, first, second } = comparison;
  const byUnit = [first, second].some(({ rate }) => rate.kind === "rate" && rate.estimate.method === "poisson-robust");
  if (likeAges.kind !== "estimate" && likeAges.kind !== "no-upper-limit")
    return { verdict: "too few to judge", probability: undefined, byUnit };
  const robust = byUnit && repeats.kind === "compared" ? repeats.probability : 0;
  const probability = Math.max(likeAges.pValue, robust);
  if (likeAges.kind === "estimate" && gradeOf(likeAges.estimate) === "thin")
    return { verdict: "too few to judge", probability, byUnit };
  if (probability >= probably) return { verdict: "no sign of a difference", probability, byUnit };
  const above = likeAges.kind === "no-upper-limit" || likeAges.estimate.point > 1;
  const how = probability < clearly ? "clearly" : "probably";
  return { verdict: above ? `${how} above` : `${how} below`, probability, byUnit };
}
