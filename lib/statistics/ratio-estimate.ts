import type { Estimate } from "./estimate";
import { observedOverExpected } from "./intervals/observed-over-expected";
import { type CountInGroup, rateRatio } from "./intervals/rate-ratio";
import { limits } from "./rate-estimate";

/**
 * A group's rate over another's as an Estimate. Its denominator is the number of events that the group would have
 * had at the other's rate.
 * @returns the estimate with its p-value (central, matching the interval), or the case in which no ratio exists
 * @throws RangeError for an argument outside its range
 * Checked: tests/statistics/estimates.test.ts.
 */
export function rateRatioEstimate({ group, rest, level }: RateRatioEstimateInput): RateRatioEstimate {
  const at = (confidence: number) => rateRatio({ first: group, second: rest, confidence, twoSided: "central" });
  const outer = at(level);
  const inner = at(0.5);
  if (outer.kind === "no-events") return outer;
  if (outer.kind === "no-upper-limit") return outer;
  if (inner.kind !== "ratio") return { kind: "no-events" };
  const n = (rest.events / rest.exposure) * group.exposure;
  const shared = { events: group.events, n, level, method: "rate-ratio-exact", basis: { kind: "ratio" } } as const;
  return { kind: "estimate", estimate: { ...limits(outer, inner), ...shared }, pValue: outer.pValue };
}

export interface RateRatioEstimateInput {
  readonly group: CountInGroup;
  readonly rest: CountInGroup;
  readonly level: number;
}

export type RateRatioEstimate =
  | { readonly kind: "estimate"; readonly estimate: Estimate; readonly pValue: number }
  | { readonly kind: "no-upper-limit"; readonly low: number; readonly pValue: number }
  | { readonly kind: "no-events" };

/** Observed over expected events as an Estimate; its denominator is the expected number. */
export function observedExpectedEstimate({ observed, expected, level }: ObservedExpectedEstimateInput): Estimate {
  const outer = observedOverExpected({ observed, expected, confidence: level });
  const inner = observedOverExpected({ observed, expected, confidence: 0.5 });
  const shared = { level, method: "observed-over-expected-exact", basis: { kind: "ratio" } } as const;
  return { ...limits(outer, inner), events: observed, n: expected, ...shared };
}

export interface ObservedExpectedEstimateInput {
  readonly observed: number;
  readonly expected: number;
  readonly level: number;
}
