import { type StratifiedRateRatioInput, stratifiedRateRatio } from "./intervals/stratified-rate-ratio";
import { limits } from "./rate-estimate";
import type { RateRatioEstimate } from "./ratio-estimate";

/**
 * A group's rate over another's at like ages, as an Estimate. Its denominator is the number of events that the group
 * would have had at the other's rates, stratum by stratum.
 * @returns the estimate with its p-value (central, matching the interval), or the case in which no ratio exists
 * @throws RangeError for an argument outside its range
 * Checked: tests/statistics/stratified-rate-ratio.test.ts.
 */
export function stratifiedRatioEstimate({ strata, level }: StratifiedRatioEstimateInput): RateRatioEstimate {
  const outer = stratifiedRateRatio({ strata, confidence: level });
  const inner = stratifiedRateRatio({ strata, confidence: 0.5 });
  if (outer.kind !== "ratio") return outer;
  if (inner.kind !== "ratio") return { kind: "no-events" };
  const events = strata.reduce((sum, { first }) => sum + first.events, 0);
  const n = strata.reduce((sum, { first, second }) => sum + (second.events / second.exposure) * first.exposure, 0);
  const shared = { events, n, level, method: "rate-ratio-stratified-exact", basis: { kind: "ratio" } } as const;
  return { kind: "estimate", estimate: { ...limits(outer, inner), ...shared }, pValue: outer.pValue };
}

export interface StratifiedRatioEstimateInput {
  readonly strata: StratifiedRateRatioInput["strata"];
  readonly level: number;
}
