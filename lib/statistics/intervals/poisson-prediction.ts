import { binomialAtLeast, binomialAtMost } from "../discrete/binomial";
import { smallestReaching } from "../discrete/smallest-reaching";
import { requirePositive, requireProbability, requireWholeNumber } from "../require";

/**
 * Limits for a future count of a Poisson process, given a past count: exact, by conditioning on the total.
 * Both the past count's chance error and the future one's are in it, unlike in a limit that takes the rate as known.
 * @param pastEvents      whole number, 0 or more, over pastExposure (above 0)
 * @param futureExposure  above 0, same unit
 * @param confidence      in (0, 1), for the side or sides asked for
 * @param side            "both" spends half of the doubt on each side
 * @param bound           "first-rejected" gives the outermost-in count that the data reject (the convention of
 *   Nelson and of most programs, one unit conservative); "last-accepted" the outermost count they do not reject
 * @returns low 0 where no count is rejected below; "no-upper-limit" never occurs, because large counts always are
 * @throws RangeError for an argument outside its range
 * Source: W. Nelson (1970), Journal of Quality Technology 2, 1-11; Hahn & Meeker (1991), section 7.6.
 * Checked: tests/statistics/prediction.test.ts (case C05), by definition.
 */
export function poissonPrediction(input: PoissonPredictionInput): PoissonPrediction {
  const { pastEvents, pastExposure, futureExposure, confidence, side, bound } = input;
  requireWholeNumber("pastEvents", pastEvents);
  requirePositive("pastExposure", pastExposure);
  requirePositive("futureExposure", futureExposure);
  requireProbability("confidence", confidence);
  const tail = side === "both" ? (1 - confidence) / 2 : 1 - confidence;
  const chance = pastExposure / (pastExposure + futureExposure);
  const point = (pastEvents / pastExposure) * futureExposure;
  const problem = { pastEvents, chance, tail, guess: point };
  const inward = bound === "first-rejected" ? 0 : 1;
  return {
    point,
    low: side === "upper" ? 0 : Math.max(0, firstAcceptedBelow(problem) - (1 - inward)),
    high: side === "lower" ? { kind: "none" } : { kind: "count", count: firstRejectedAbove(problem) - inward },
  };
}

export interface PoissonPredictionInput {
  readonly pastEvents: number;
  readonly pastExposure: number;
  readonly futureExposure: number;
  readonly confidence: number;
  readonly side: "both" | "upper" | "lower";
  readonly bound: "first-rejected" | "last-accepted";
}

export interface PoissonPrediction {
  readonly point: number;
  readonly low: number;
  readonly high: { readonly kind: "count"; readonly count: number } | { readonly kind: "none" };
}

interface Problem {
  readonly pastEvents: number;
  readonly chance: number;
  readonly tail: number;
  readonly guess: number;
}

/** Smallest future count so large that the past count would look too small beside it. */
function firstRejectedAbove({ pastEvents, chance, tail, guess }: Problem): number {
  return smallestReaching({
    guess,
    step: Math.sqrt(guess) + 1,
    reached: (future) => binomialAtMost(pastEvents, { trials: pastEvents + future, chance }) <= tail,
  });
}

/** Smallest future count that is not too small beside the past one. */
function firstAcceptedBelow({ pastEvents, chance, tail, guess }: Problem): number {
  return smallestReaching({
    guess,
    step: Math.sqrt(guess) + 1,
    reached: (future) => binomialAtLeast(pastEvents, { trials: pastEvents + future, chance }) > tail,
  });
}
