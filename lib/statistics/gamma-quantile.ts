import { incompleteGamma, poissonWeight } from "./incomplete-gamma";
import { logGammaOnePlus } from "./log-gamma";
import { normalQuantile } from "./normal";
import { requirePositive, requireProbability } from "./require";
import { logTailRoot } from "./special/log-tail-root";

/**
 * The value below which a gamma distribution of the given shape and rate 1 holds `probability`.
 * @param probability strictly between 0 and 1
 * @param shape       above 0
 * @returns a number above 0; 0 only where the true value is below the smallest double
 * @throws RangeError for an argument outside its range
 * Source: Newton's method on the logarithm of the tail, started from Wilson & Hilferty (1931), PNAS 17, 684-688.
 * Checked: tests/statistics/special/quantiles.test.ts, against tests/reference/quantiles.tsv.
 */
export function gammaQuantile(probability: number, shape: number): number {
  requireProbability("probability", probability);
  requirePositive("shape", shape);
  return probability <= 0.5 ? lowerRoot(probability, shape) : upperRoot(1 - probability, shape);
}

/** The value above which the same distribution holds `probability`: no digits are lost when it is tiny. */
export function gammaUpperQuantile(probability: number, shape: number): number {
  requireProbability("probability", probability);
  requirePositive("shape", shape);
  return probability <= 0.5 ? upperRoot(probability, shape) : lowerRoot(1 - probability, shape);
}

function lowerRoot(target: number, shape: number): number {
  // For x → 0 the lower tail is x^shape / Γ(shape + 1), a bound that small shapes nearly reach.
  const logSmall = (Math.log(target) + logGammaOnePlus(shape)) / shape;
  if (logSmall < -744) return 0;
  const cube = wilsonHilferty(normalQuantile(target), shape);
  const start = cube > 0 ? Math.max(logSmall, Math.log(cube)) : logSmall;
  const root = logTailRoot({
    start,
    target,
    grows: 1,
    tail: (logX) => {
      const x = Math.exp(logX);
      return { probability: incompleteGamma(shape, x).lower, slope: shape * poissonWeight(shape, x) };
    },
  });
  return Math.exp(root);
}

function upperRoot(target: number, shape: number): number {
  const cube = wilsonHilferty(-normalQuantile(target), shape);
  const start = Math.log(Math.max(cube, 1e-3 * shape));
  const root = logTailRoot({
    start,
    target,
    grows: -1,
    tail: (logX) => {
      const x = Math.exp(logX);
      return { probability: incompleteGamma(shape, x).upper, slope: -shape * poissonWeight(shape, x) };
    },
  });
  return Math.exp(root);
}

function wilsonHilferty(z: number, shape: number): number {
  const ninth = 1 / (9 * shape);
  return shape * (1 - ninth + z * Math.sqrt(ninth)) ** 3;
}
