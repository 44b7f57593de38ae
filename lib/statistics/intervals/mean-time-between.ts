import { gammaQuantile, gammaUpperQuantile } from "../gamma-quantile";
import { requirePositive, requireProbability, requireWholeNumber } from "../require";
import type { Interval } from "./interval";

/**
 * Mean time between failures under a constant failure rate, with its exact interval.
 * The two ways of ending an observation differ: stopped at a time, the lower limit uses 2r + 2 degrees of freedom;
 * stopped at the last failure, both limits use 2r.
 * @param failures   whole number, 0 or more
 * @param time       total running time, above 0; results are in its unit
 * @param confidence two-sided level in (0, 1)
 * @param stoppedAt  what ended the observation
 * @returns without failures only a lower limit exists, and it is one-sided at the same level
 * @throws RangeError for an argument outside its range
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.5.1.
 * Checked: tests/statistics/poisson-rates.test.ts (case P03).
 */
export function meanTimeBetween({ failures, time, confidence, stoppedAt }: RunningTime): MeanTimeBetween {
  requireWholeNumber("failures", failures);
  requirePositive("time", time);
  requireProbability("confidence", confidence);
  if (failures === 0) return { kind: "lower-limit-only", low: time / -Math.log(1 - confidence) };
  const tail = (1 - confidence) / 2;
  const shape = stoppedAt === "time" ? failures + 1 : failures;
  return {
    kind: "interval",
    point: time / failures,
    low: time / gammaUpperQuantile(tail, shape),
    high: time / gammaQuantile(tail, failures),
  };
}

export interface RunningTime {
  readonly failures: number;
  readonly time: number;
  readonly confidence: number;
  readonly stoppedAt: "time" | "failure";
}

export type MeanTimeBetween =
  | ({ readonly kind: "interval" } & Interval)
  | { readonly kind: "lower-limit-only"; readonly low: number };
