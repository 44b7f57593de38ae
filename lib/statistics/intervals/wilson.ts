import { normalQuantile } from "../normal";
import { type BinomialTrials, requireTrials, tailOf } from "./binomial-trials";
import type { Interval } from "./interval";

/**
 * A share with its Wilson (score) interval: close to its nominal level on average, sensible at 0 and at all.
 * @param continuityCorrection true widens it towards the exact interval
 * @returns limits in 0..1; low is exactly 0 at no events, high exactly 1 when every trial is an event
 * @throws RangeError for an argument outside its range
 * Source: Wilson (1927), JASA 22, 209-212; corrected form of Newcombe (1998), Statistics in Medicine 17, 857-872.
 * Checked: tests/statistics/shares.test.ts (cases B01, B02, B04).
 */
export function wilson({ events, trials, confidence, continuityCorrection }: WilsonTrials): Interval {
  requireTrials({ events, trials, confidence });
  const z = -normalQuantile(tailOf(confidence));
  const share = events / trials;
  const [low, high] = continuityCorrection
    ? correctedLimits({ share, trials, z })
    : scoreLimits({ share, trials, chiSquare: z * z });
  return { point: share, low: events === 0 ? 0 : Math.max(0, low), high: events === trials ? 1 : Math.min(1, high) };
}

export interface WilsonTrials extends BinomialTrials {
  readonly continuityCorrection: boolean;
}

/** Both roots of (share − p)² = χ² p (1 − p) / n. */
export function scoreLimits({ share, trials, chiSquare }: ScoreInput): readonly [number, number] {
  const middle = share + chiSquare / (2 * trials);
  const arm = Math.sqrt(chiSquare * ((share * (1 - share)) / trials + chiSquare / (4 * trials * trials)));
  const scale = 1 + chiSquare / trials;
  // The low root from the product of the roots: no cancellation at small shares.
  return [(share * share) / (middle + arm), (middle + arm) / scale];
}

export interface ScoreInput {
  readonly share: number;
  readonly trials: number;
  readonly chiSquare: number;
}

function correctedLimits({
  share,
  trials,
  z,
}: {
  share: number;
  trials: number;
  z: number;
}): readonly [number, number] {
  const square = z * z;
  const scale = 2 * (trials + square);
  const rest = trials * (1 - share);
  const lowArm = z * Math.sqrt(Math.max(0, square - 2 - 1 / trials + 4 * share * (rest + 1)));
  const highArm = z * Math.sqrt(Math.max(0, square + 2 - 1 / trials + 4 * share * (rest - 1)));
  const middle = 2 * trials * share + square;
  return [(middle - 1 - lowArm) / scale, (middle + 1 + highArm) / scale];
}
