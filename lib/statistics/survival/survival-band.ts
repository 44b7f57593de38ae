import { requirePositive, requireProbability } from "../require";
import { equalPrecisionCritical, hallWellnerCritical } from "./band-critical-value";
import type { DrawnCurve, SurvivalStep } from "./kaplan-meier";
import type { Limits } from "./limits";
import { type SurvivalInterval, survivalLimits } from "./survival-limits";

/**
 * Band that holds the whole survival curve between two ages at once, where pointwise limits hold it at one age only.
 * @param curve       a drawn Kaplan–Meier curve
 * @param from, to    ages of the stretch; steps outside it are left out; it must not begin before the first failure to matter
 * @param shape       `equal-precision`: proportional to the pointwise limits. `hall-wellner`: wider early, narrower late;
 *                    needs `lives`, the number watched from age 0, and no late entry
 * @param confidence  level in (0, 1) for the whole stretch; interval: the scale, as in `kaplanMeier`; no defaults
 * @returns limits at each step of the stretch, the first at `from` where a step came before it; `too-short`: fewer than two steps with survival above 0 in it
 * @throws RangeError for an argument outside its range
 * Source: Nair (1984); Hall and Wellner (1980); Klein and Moeschberger (2003), Survival Analysis, section 4.4.
 * Checked: tests/statistics/survival/survival-band.test.ts.
 */
export function survivalBand(curve: DrawnCurve, options: SurvivalBandOptions): SurvivalBand {
  const { from, to, shape, confidence, interval } = options;
  requireProbability("confidence", confidence);
  if (!(from >= 0 && to > from))
    throw new RangeError(`to must be above from, and from 0 or more; they are ${to} and ${from}`);
  const steps = curve.steps.filter((step) => step.age <= to && step.survival > 0 && step.survival < 1);
  const before = steps.findLastIndex((step) => step.age <= from);
  const stretch = steps.slice(Math.max(0, before));
  const [first, last] = [stretch[0], stretch.at(-1)];
  if (first === undefined || last === undefined || first === last) return { kind: "too-short" };
  const multiplier = bandMultiplier(shape, { first: logVariance(first), last: logVariance(last), confidence });
  return {
    kind: "band",
    steps: stretch.map((step) => ({
      age: Math.max(step.age, from),
      survival: step.survival,
      limits: survivalLimits({
        survival: step.survival,
        logVariance: logVariance(step),
        multiplier: multiplier(logVariance(step)),
        interval,
      }),
    })),
  };
}

export type BandShape =
  | { readonly kind: "equal-precision" }
  | { readonly kind: "hall-wellner"; readonly lives: number };

export interface SurvivalBandOptions {
  readonly from: number;
  readonly to: number;
  readonly shape: BandShape;
  readonly confidence: number;
  readonly interval: SurvivalInterval;
}

export type SurvivalBand =
  | {
      readonly kind: "band";
      readonly steps: readonly { readonly age: number; readonly survival: number; readonly limits: Limits }[];
    }
  | { readonly kind: "too-short" };

function logVariance({ survival, limits }: SurvivalStep): number {
  return limits.kind === "limits" ? (limits.standardError / survival) ** 2 : 0;
}

/** Half-width of the band in standard errors, as a function of the variance of log survival at the step. */
function bandMultiplier(
  shape: BandShape,
  { first, last, confidence }: { first: number; last: number; confidence: number },
): (variance: number) => number {
  if (shape.kind === "equal-precision") {
    const critical = equalPrecisionCritical(last / first, confidence);
    return () => critical;
  }
  const { lives } = shape;
  requirePositive("shape.lives", lives);
  const place = (variance: number) => (lives * variance) / (1 + lives * variance);
  const critical = hallWellnerCritical({ from: place(first), to: place(last), confidence });
  return (variance) => (critical * (1 + lives * variance)) / Math.sqrt(lives * variance);
}
