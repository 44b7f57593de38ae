import { betaWeight, incompleteBetaAt, type UnitSplit } from "./incomplete-beta";
import { logGamma } from "./log-gamma";
import { normalQuantile } from "./normal";
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
  const logSmall = smallValue(target, a, b);
  if (logSmall < -744) return { x: 0, y: 1 };
  // Large parameters make the logit nearly normal; with small ones the tail near x = 0 is the better guide.
  const spread = Math.sqrt(1 / a + 1 / b);
  const normal = Math.log(a / b) + normalQuantile(target) * spread;
  const start = Math.min(a, b) >= 2 ? normal : Math.min(logSmall < 0 ? logit(logSmall) : 0, Math.log(a / b));
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

/** Log of x where the tail near x = 0, x^a / (a B(a, b)) to first order, holds the target. */
function smallValue(target: number, a: number, b: number): number {
  const logBeta = logGamma(a) + logGamma(b) - logGamma(a + b);
  return (Math.log(target) + Math.log(a) + logBeta) / a;
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
