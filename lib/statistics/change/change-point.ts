import { type RateRatio, rateRatio } from "../intervals/rate-ratio";
import { requirePositive, requireProbability, requireWholeNumber } from "../require";

/**
 * The one place in a series of counts where splitting it into two constant rates explains it best.
 * @param periods    events (whole number, 0 or more) over exposure (above 0), in time order; at least two
 * @param confidence of the exact interval for the ratio of the rates, in (0, 1)
 * @returns index of the last period before the change (the earliest, if several are equally good), both rates, twice
 *   the gain in log-likelihood over no change, and the ratio before / after. The ratio's interval takes the split as
 *   given, although the data chose it, and the gain has no chi-square distribution for the same reason.
 * @throws RangeError for an argument outside its range
 * Source: Hinkley (1970), Biometrika 57, 1-17; Jarrett (1979), Biometrika 66, 191-193, for the data.
 * Checked: tests/statistics/change.test.ts (case D03).
 */
export function changePoint({ periods, confidence }: ChangePointInput): ChangePoint {
  requirePeriods(periods);
  requireProbability("confidence", confidence);
  const whole = total(periods);
  if (whole.events === 0) return { kind: "no-events" };
  let best = { last: 0, fit: Number.NEGATIVE_INFINITY, before: whole, after: whole };
  let before = { events: 0, exposure: 0 };
  const remaining = exposureFrom(periods);
  periods.slice(0, -1).forEach((period, last) => {
    before = { events: before.events + period.events, exposure: before.exposure + period.exposure };
    const after = { events: whole.events - before.events, exposure: remaining[last + 1] ?? 0 };
    const fit = logLikelihood(before) + logLikelihood(after);
    if (fit > best.fit + 1e-12 * Math.abs(fit)) best = { last, fit, before, after };
  });
  return {
    kind: "change",
    lastBefore: best.last,
    rateBefore: best.before.events / best.before.exposure,
    rateAfter: best.after.events / best.after.exposure,
    likelihoodRatio: 2 * (best.fit - logLikelihood(whole)),
    beforeOverAfter: rateRatio({ first: best.before, second: best.after, confidence, twoSided: "central" }),
  };
}

export interface ChangePointInput {
  readonly periods: readonly { readonly events: number; readonly exposure: number }[];
  readonly confidence: number;
}

export type ChangePoint =
  | {
      readonly kind: "change";
      readonly lastBefore: number;
      readonly rateBefore: number;
      readonly rateAfter: number;
      readonly likelihoodRatio: number;
      readonly beforeOverAfter: RateRatio;
    }
  | { readonly kind: "no-events" };

interface Sum {
  readonly events: number;
  readonly exposure: number;
}

function total(periods: readonly Sum[]): Sum {
  return periods.reduce<Sum>(
    (sum, { events, exposure }) => ({ events: sum.events + events, exposure: sum.exposure + exposure }),
    { events: 0, exposure: 0 },
  );
}

/** Exposure from each period to the end, added from the end so that no subtraction can leave dust. */
function exposureFrom(periods: readonly Sum[]): readonly number[] {
  let sum = 0;
  return periods
    .toReversed()
    .map(({ exposure }) => (sum += exposure))
    .toReversed();
}

/** Poisson log-likelihood at its own best rate, without the parts that no split changes. */
function logLikelihood({ events, exposure }: Sum): number {
  return events === 0 ? 0 : events * Math.log(events / exposure) - events;
}

function requirePeriods(periods: readonly Sum[]): void {
  if (periods.length < 2) throw new RangeError(`periods must hold at least two periods; it holds ${periods.length}`);
  periods.forEach(({ events, exposure }, i) => {
    requireWholeNumber(`periods[${i}].events`, events);
    requirePositive(`periods[${i}].exposure`, exposure);
  });
}
