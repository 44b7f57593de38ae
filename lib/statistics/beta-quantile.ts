import { betaWeight, incompleteBetaAt, type UnitSplit } from "./incomplete-beta";
import { logGamma } from "./log-gamma";
import { requirePositive, requireProbability } from "./require";
import { logTailRoot } from "./special/log-tail-root";

/**
 * The value below which a beta distribution holds `probability`.
 * @param probability strictly between 0 and 1
 * @param a, b        above 0
 * @returns a number in 0..1
 * @throws RangeError for an argument outside its range
 * Source: Newton's method on the logarithm of the tail against the logit of x, where that logarithm is concave.
 * Checked: tests/statistics/special/quantiles.test.ts, against tests/reference/quantiles.tsv.
 */
export function betaQuantile(probability: number, a: number, b: number): number {
  return betaQuantileSplit(probability, a, b).x;
}

/** The value above which the same distribution holds `probability`: no digits are lost when it is tiny. */
export function betaUpperQuantile(probability: number, a: number, b: number): number {
  return betaQuantileSplit(probability, b, a).y;
}

/** The quantile x together with 1 − x, each with all its digits. */
export function betaQuantileSplit(probability: number, a: number, b: number): UnitSplit {
  requireProbability("probability", probability);
  requirePositive("a", a);
  requirePositive("b", b);
  if (probability <= 0.5) return lowerRoot(probability, a, b);
  const { x, y } = lowerRoot(1 - probability, b, a);
  return { x: y, y: x };
}

function lowerRoot(target: number, a: number, b: number): UnitSplit {
  // Near x = 0 the lower tail is x^a / (a B(a, b)) to first order.
  const logBeta = logGamma(a) + logGamma(b) - logGamma(a + b);
  const logSmall = (Math.log(target) + Math.log(a) + logBeta) / a;
  if (logSmall < -744) return { x: 0, y: 1 };
  const middle = Math.log(a / b);
  const start = Math.min(logSmall < 0 ? logit(logSmall) : middle, middle);
  const root = logTailRoot({
    start,
    target,
    grows: 1,
    tail: (at) => {
      const split = fromLogit(at);
      return { probability: incompleteBetaAt(a, b, split).lower, slope: betaWeight(a, b, split) };
    },
  });
  return fromLogit(root);
}

/** Logit of exp(logX) for logX below 0. */
function logit(logX: number): number {
  return logX - Math.log(-Math.expm1(logX));
}

function fromLogit(at: number): UnitSplit {
  const small = Math.exp(-Math.abs(at));
  const near = small / (1 + small);
  const far = 1 / (1 + small);
  return at < 0 ? { x: near, y: far } : { x: far, y: near };
}
