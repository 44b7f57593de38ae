import { clopperPearson } from "@/lib/statistics/intervals/clopper-pearson";
import type { Interval } from "@/lib/statistics/intervals/interval";
import { jeffreys } from "@/lib/statistics/intervals/jeffreys";
import { poissonMidP } from "@/lib/statistics/intervals/poisson-mid-p";
import { poissonPrediction } from "@/lib/statistics/intervals/poisson-prediction";
import { poissonRate } from "@/lib/statistics/intervals/poisson-rate";
import { rateRatio } from "@/lib/statistics/intervals/rate-ratio";
import { robustRate, unitSums } from "@/lib/statistics/intervals/robust-rate";
import { wilson } from "@/lib/statistics/intervals/wilson";
import type { RandomSource } from "./random-source";

/** One kind of interval at one true value; `draw` takes data at random and says whether the interval holds the truth. */
export interface CoverageCase {
  readonly method: string;
  readonly setting: string;
  /** True where the method promises never to cover less than its level. */
  readonly guaranteed: boolean;
  readonly draw: (random: RandomSource) => boolean;
}

export const expectedCounts = [0.5, 1, 2, 3.7, 5, 10, 20, 50, 100, 200];

export function coverageCases(confidence: number): readonly CoverageCase[] {
  return [
    ...poissonCases("poisson-exact", true, (events) => poissonRate({ events, exposure: 1, confidence })),
    ...poissonCases("poisson-mid-p", false, (events) => poissonMidP({ events, exposure: 1, confidence })),
    ...binomialCases("clopper-pearson", true, (events, trials) => clopperPearson({ events, trials, confidence })),
    ...binomialCases("wilson", false, (events, trials) =>
      wilson({ events, trials, confidence, continuityCorrection: false }),
    ),
    ...binomialCases("jeffreys", false, (events, trials) => jeffreys({ events, trials, confidence })),
    ...expectedCounts.map((mean) => ratioCase(mean, confidence)),
    ...expectedCounts.map((mean) => predictionCase(mean, confidence)),
    ...[0, 1, 4].flatMap((spread) => [20, 60, 300].map((units) => robustCase({ units, spread, confidence }))),
  ];
}

function poissonCases(method: string, guaranteed: boolean, interval: (events: number) => Interval): CoverageCase[] {
  const known = remembered(interval);
  return expectedCounts.map((mean) => ({
    method,
    setting: `mean ${mean}`,
    guaranteed,
    draw: (random) => holds(known(random.poisson(mean)), mean),
  }));
}

function binomialCases(
  method: string,
  guaranteed: boolean,
  interval: (events: number, trials: number) => Interval,
): CoverageCase[] {
  return [30, 200].flatMap((trials) => {
    const known = remembered((events) => interval(events, trials));
    return [0.02, 0.1, 0.5, 0.93].map((share) => ({
      method,
      setting: `${share} of ${trials}`,
      guaranteed,
      draw: (random: RandomSource) => holds(known(random.binomial(trials, share)), share),
    }));
  });
}

/** The first group expects `mean` events, the second three times as many over twice the exposure: the ratio is 2/3. */
function ratioCase(mean: number, confidence: number): CoverageCase {
  return {
    method: "rate-ratio-exact",
    setting: `means ${mean} and ${3 * mean}`,
    guaranteed: true,
    draw: (random) => {
      const first = { events: random.poisson(mean), exposure: 1 };
      const second = { events: random.poisson(3 * mean), exposure: 2 };
      const result = rateRatio({ first, second, confidence, twoSided: "central" });
      // Without events, and with no limit above, nothing that could be wrong was said.
      if (result.kind === "no-events") return true;
      return result.low <= 2 / 3 && (result.kind === "no-upper-limit" || 2 / 3 <= result.high);
    },
  };
}

function predictionCase(mean: number, confidence: number): CoverageCase {
  const known = remembered((pastEvents) => {
    const bound = "last-accepted" as const;
    return poissonPrediction({ pastEvents, pastExposure: 2, futureExposure: 1, confidence, side: "both", bound });
  });
  return {
    method: "poisson-prediction",
    setting: `past ${mean}, future ${mean / 2}`,
    guaranteed: true,
    draw: (random) => {
      const { low, high } = known(random.poisson(mean));
      const future = random.poisson(mean / 2);
      return low <= future && (high.kind === "none" || future <= high.count);
    },
  };
}

/** Units of unequal times and rate 0.4; spread 0 is Poisson, else a unit's rate varies with variance spread × 0.16. */
function robustCase({
  units,
  spread,
  confidence,
}: {
  units: number;
  spread: number;
  confidence: number;
}): CoverageCase {
  return {
    method: "poisson-robust",
    setting: `${units} units, frailty variance ${spread}`,
    guaranteed: false,
    draw: (random) => {
      const frailty = () => (spread === 0 ? 1 : spread === 1 ? random.gamma(1) : random.uniform() < 0.2 ? 5 : 0);
      const rows = Array.from({ length: units }, (_, i) => {
        const exposure = 0.5 + (i % 5);
        return { exposure, events: random.poisson(0.4 * frailty() * exposure) };
      });
      const result = robustRate({ ...unitSums(rows), confidence });
      return result.kind !== "interval" || holds(result, 0.4);
    },
  };
}

function holds({ low, high }: Pick<Interval, "low" | "high">, truth: number): boolean {
  return low <= truth && truth <= high;
}

function remembered<Result>(compute: (events: number) => Result): (events: number) => Result {
  const known = new Map<number, Result>();
  return (events) => {
    const result = known.get(events) ?? compute(events);
    known.set(events, result);
    return result;
  };
}
