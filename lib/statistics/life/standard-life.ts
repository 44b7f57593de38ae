import { normalCdf, normalQuantile } from "../normal";
import { normalTail } from "./normal-tail";

/** The two shapes that log age can have, each with location 0 and spread 1; z is (log age − location) / spread. */
export type LifeShape = "weibull" | "lognormal";

export interface StandardLife {
  /** Probability of having failed by z, exact where it is small. */
  readonly failed: (z: number) => number;
  /** Log odds of having failed by z; finite where the probability itself rounds to 0 or 1. */
  readonly logit: (z: number) => number;
  /** The z by which a fraction in (0, 1) has failed. */
  readonly quantile: (fraction: number) => number;
  /** How fast the logit of the failed fraction rises with z. */
  readonly logitSlope: (z: number) => number;
}

const weibull: StandardLife = {
  failed: (z) => -Math.expm1(-Math.exp(z)),
  // Log failed less log sound; far to the left the failed fraction is the hazard itself, whose logarithm is z.
  logit: (z) => (z < -40 ? z : Math.log(-Math.expm1(-Math.exp(z))) + Math.exp(z)),
  quantile: (fraction) => Math.log(-Math.log1p(-fraction)),
  logitSlope: (z) => (Math.exp(z) === 0 ? 1 : Math.exp(z) / -Math.expm1(-Math.exp(z))),
};

const lognormal: StandardLife = {
  failed: normalCdf,
  logit: (z) => normalTail(-z).log - normalTail(z).log,
  quantile: normalQuantile,
  // Density over both tails: the hazard of one tail over the other, taken from the smaller.
  logitSlope: (z) => normalTail(Math.abs(z)).hazard / normalCdf(Math.abs(z)),
};

export const STANDARD_LIVES: Readonly<Record<LifeShape, StandardLife>> = { weibull, lognormal };
