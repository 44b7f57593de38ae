import type { Estimate } from "../estimate";
import { gammaQuantile, gammaUpperQuantile } from "../gamma-quantile";
import type { Interval } from "../intervals/interval";
import { requirePositive, requireProbability, requireWholeNumber } from "../require";

/**
 * One group's rate drawn towards the rates of all groups: the posterior under a fitted gamma distribution of rates.
 * A group with little exposure is drawn far, one with much hardly at all.
 * @param events, exposure  of the group; whole number, 0 or more, over a number above 0
 * @param prior             shape and rate of the gamma, from gammaPoissonFit
 * @param confidence        of the equal-tailed posterior interval, in (0, 1)
 * @returns posterior mean and interval; the uncertainty of the prior itself is not in it
 * @throws RangeError for an argument outside its range
 * Source: Gaver & O'Muircheartaigh (1987), Technometrics 29, 1-15.
 * Checked: tests/statistics/multiplicity.test.ts (case H03).
 */
export function shrunkenRate({ events, exposure, prior, confidence }: ShrunkenRateInput): Interval {
  requireWholeNumber("events", events);
  requirePositive("exposure", exposure);
  requirePositive("prior.shape", prior.shape);
  requirePositive("prior.rate", prior.rate);
  requireProbability("confidence", confidence);
  const shape = prior.shape + events;
  const rate = prior.rate + exposure;
  const tail = (1 - confidence) / 2;
  return {
    point: shape / rate,
    low: gammaQuantile(tail, shape) / rate,
    high: gammaUpperQuantile(tail, shape) / rate,
  };
}

export interface ShrunkenRateInput {
  readonly events: number;
  readonly exposure: number;
  readonly prior: { readonly shape: number; readonly rate: number };
  readonly confidence: number;
}

/** The same as an Estimate, per unit-year. */
export function shrunkenRateEstimate({ confidence: level, ...group }: ShrunkenRateInput): Estimate {
  const outer = shrunkenRate({ ...group, confidence: level });
  const inner = shrunkenRate({ ...group, confidence: 0.5 });
  return {
    events: group.events,
    n: group.exposure,
    point: outer.point,
    lo: outer.low,
    hi: outer.high,
    innerLo: inner.low,
    innerHi: inner.high,
    level,
    method: "gamma-poisson",
    basis: { kind: "rate", exposureUnit: "unit-years" },
  };
}
