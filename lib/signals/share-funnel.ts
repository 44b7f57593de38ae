import { binomialQuantile } from "@/lib/statistics/discrete/binomial";
import { requireProbability, requireWholeNumber } from "@/lib/statistics/require";

/** Between which shares a group of that size falls by chance alone. */
export interface FunnelLimits {
  readonly low95: number;
  readonly high95: number;
  readonly low998: number;
  readonly high998: number;
}

/**
 * Limits of a funnel of shares around the share of all together: exact binomial quantiles, 95 and 99.8 times in 100.
 * @param trials  of the group, 1 or more
 * @param share   of all together, in (0, 1)
 * Source: Spiegelhalter (2005), Statistics in Medicine 24, 1185-1202.
 * Checked: tests/signals/share-funnel.test.ts, by definition.
 */
export function shareFunnel({ trials, share }: { readonly trials: number; readonly share: number }): FunnelLimits {
  requireWholeNumber("trials", trials);
  requireProbability("share", share);
  if (trials === 0) throw new RangeError("trials must be 1 or more; it is 0");
  const at = (probability: number) => binomialQuantile(probability, { trials, chance: share }) / trials;
  return { low95: at(0.025), high95: at(0.975), low998: at(0.001), high998: at(0.999) };
}
