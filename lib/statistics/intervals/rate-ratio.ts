import { betaQuantileSplit } from "../beta-quantile";
import { binomialAtLeast, binomialAtMost } from "../discrete/binomial";
import { requirePositive, requireProbability, requireWholeNumber } from "../require";
import { minimumLikelihoodLimits, minimumLikelihoodP } from "./minimum-likelihood";

/**
 * Ratio of two event rates, given the total count: the first group's events are then binomial.
 * The p-value and the interval belong together, so that "p below 1 − confidence" and "1 is outside" always agree.
 * @param first, second  events (whole number, 0 or more) over exposure (above 0, same unit)
 * @param confidence     two-sided level in (0, 1)
 * @param twoSided       "central" puts half of the doubt on each side; "minimum-likelihood" counts every outcome
 *   that is no likelier than the observed one, is often shorter, and has no fixed tail
 * @returns "ratio", or "no-upper-limit" when the second group has no events, or "no-events" when neither has
 * @throws RangeError for an argument outside its range
 * Source: Fay (2010), R Journal 2(1), 53-58; Przyborowski & Wilenski (1940), Biometrika 31, 313-323.
 * Checked: tests/statistics/rate-ratio.test.ts (cases P05, P07).
 */
export function rateRatio({ first, second, confidence, twoSided }: RateRatioInput): RateRatio {
  requireGroup("first", first);
  requireGroup("second", second);
  requireProbability("confidence", confidence);
  const total = first.events + second.events;
  if (total === 0) return { kind: "no-events" };
  const limits = twoSided === "central" ? centralLimits : minimumLikelihoodLimits;
  const { low, high } = limits({ events: first.events, trials: total, confidence });
  // Odds of an event falling in the first group, over the odds that equal rates give, are the ratio of rates.
  const scale = second.exposure / first.exposure;
  const evenChance = first.exposure / (first.exposure + second.exposure);
  const p = twoSided === "central" ? centralP : minimumLikelihoodP;
  const pValue = p({ events: first.events, trials: total, chance: evenChance });
  if (second.events === 0) return { kind: "no-upper-limit", low: scale * low, pValue };
  const point = (first.events / second.events) * scale;
  return { kind: "ratio", point, low: scale * low, high: scale * high, pValue };
}

export interface RateRatioInput {
  readonly first: CountInGroup;
  readonly second: CountInGroup;
  readonly confidence: number;
  readonly twoSided: "central" | "minimum-likelihood";
}

export interface CountInGroup {
  readonly events: number;
  readonly exposure: number;
}

export type RateRatio =
  | {
      readonly kind: "ratio";
      readonly point: number;
      readonly low: number;
      readonly high: number;
      readonly pValue: number;
    }
  | { readonly kind: "no-upper-limit"; readonly low: number; readonly pValue: number }
  | { readonly kind: "no-events" };

/** Limits of the odds x / (1 − x) of a binomial chance. */
export interface OddsLimits {
  readonly low: number;
  readonly high: number;
}

function requireGroup(name: string, { events, exposure }: CountInGroup): void {
  requireWholeNumber(`${name}.events`, events);
  requirePositive(`${name}.exposure`, exposure);
}

function centralLimits({
  events,
  trials,
  confidence,
}: {
  events: number;
  trials: number;
  confidence: number;
}): OddsLimits {
  const tail = (1 - confidence) / 2;
  const low = events === 0 ? { x: 0, y: 1 } : betaQuantileSplit(tail, events, trials - events + 1);
  if (events === trials) return { low: low.x / low.y, high: Number.POSITIVE_INFINITY };
  // The upper quantile of Beta(a, b) is the lower quantile of Beta(b, a), mirrored.
  const high = betaQuantileSplit(tail, trials - events, events + 1);
  return { low: low.x / low.y, high: high.y / high.x };
}

function centralP({ events, trials, chance }: { events: number; trials: number; chance: number }): number {
  const smaller = Math.min(binomialAtMost(events, { trials, chance }), binomialAtLeast(events, { trials, chance }));
  return Math.min(1, 2 * smaller);
}
