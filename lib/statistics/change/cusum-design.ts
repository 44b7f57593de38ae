import { requirePositive } from "../require";
import { cusumRunLength } from "./cusum-run-length";
import { cusumReference } from "./poisson-cusum";

/**
 * Reference value and threshold of an upper Poisson CUSUM with a chosen mean time between false alarms.
 * @param mean           acceptable mean count per period, above 0
 * @param ratio          how many times more is to be found quickly, above 1
 * @param inControlRun   wanted periods between false alarms, above 1
 * @param referenceSteps the reference is rounded to a multiple of 1 / referenceSteps (whole number, 1..100)
 * @returns the smallest threshold, in steps of 1 / referenceSteps, whose mean run length is at least inControlRun,
 *   the run length it has, and the mean delay at the raised mean
 * @throws RangeError for an argument outside its range
 * Source: Lucas (1985), Technometrics 27, 129-144.
 * Checked: tests/statistics/change.test.ts.
 */
export function cusumDesign({ mean, ratio, inControlRun, referenceSteps }: CusumDesignInput): CusumDesign {
  requirePositive("mean", mean);
  requirePositive("inControlRun", inControlRun);
  if (!(Number.isInteger(referenceSteps) && referenceSteps >= 1 && referenceSteps <= 100)) {
    throw new RangeError(`referenceSteps must be a whole number in 1..100; it is ${referenceSteps}`);
  }
  const wanted = cusumReference({ expected: mean, ratio });
  const reference = Math.max(1, Math.round(wanted * referenceSteps)) / referenceSteps;
  const runLength = (steps: number, at: number) =>
    cusumRunLength({
      mean: at,
      reference,
      threshold: steps / referenceSteps,
      start: 0,
      side: "upper",
      signalAt: "reach",
    });
  let high = 1;
  while (runLength(high, mean) < inControlRun) high *= 2;
  let low = high / 2;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (runLength(middle, mean) >= inControlRun) high = middle;
    else low = middle;
  }
  const steps = Math.max(1, high);
  return {
    reference,
    threshold: steps / referenceSteps,
    inControlRun: runLength(steps, mean),
    detectionRun: runLength(steps, mean * ratio),
  };
}

export interface CusumDesignInput {
  readonly mean: number;
  readonly ratio: number;
  readonly inControlRun: number;
  readonly referenceSteps: number;
}

export interface CusumDesign {
  readonly reference: number;
  readonly threshold: number;
  readonly inControlRun: number;
  readonly detectionRun: number;
}
