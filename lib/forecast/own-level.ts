import { mixedDistribution } from "@/lib/statistics/demand/count-distribution";
import {
  type DiscountedLevel,
  discountedForecast,
  discountedLevel,
  discountedPath,
} from "@/lib/statistics/demand/discounted-level";
import type { MonthlyCounts } from "@/lib/statistics/demand/learn-levels";
import { logGamma } from "@/lib/statistics/log-gamma";
import type { DemandFuture, DemandMethod } from "./demand-method";
import { seasonIndex } from "./season-index";

/** A level of the part's own that drifts; how fast, and how bunched demand is, weighed by what each said of past months. */
export const ownLevel: DemandMethod = {
  key: "own-level",
  name: "a level of its own that drifts",
  prepare: (history) => (origin) => ownLevelFuture(history.slice(0, origin), undefined),
};

export const ownLevelWithSeason: DemandMethod = {
  key: "own-level-with-season",
  name: "a level of its own with a season",
  prepare: (history) => (origin) => {
    const before = history.slice(0, origin);
    return ownLevelFuture(before, seasonIndex(before));
  },
};

/** How fast levels drift, and variance over mean: a few of each are tried. Own choice, no source. */
const discounts = [1, 0.95, 0.85] as const;
const dispersions = [1, 2, 5] as const;
/** A weak belief at the start, of half a demand, around the mean of the first months. */
const priorShape = 0.5;
const firstMonths = 6;

interface WeighedLevel {
  readonly weight: number;
  readonly level: DiscountedLevel;
}

function ownLevelFuture(history: MonthlyCounts, season: readonly number[] | undefined): DemandFuture {
  const exposureOf = (month: number) => season?.[month % 12] ?? 1;
  const months = history.map((count, i) => (count === undefined ? undefined : { count, exposure: exposureOf(i) }));
  const ahead = (horizon: number) => Array.from({ length: horizon }, (_, i) => exposureOf(history.length + i));
  const levels = weighedLevels(months);
  return {
    months: (horizon) => {
      const each = levels.map(({ weight, level }) => ({ weight, months: discountedForecast(level, ahead(horizon)) }));
      return Array.from({ length: horizon }, (_, i) =>
        mixedDistribution(each.flatMap(({ weight, months: of }) => (of[i] ? [{ weight, distribution: of[i] }] : []))),
      );
    },
    path: (horizon, draws) => {
      const drawn = pickLevel(levels, draws.uniform());
      return drawn === undefined ? [] : discountedPath(drawn.level, ahead(horizon), draws);
    },
  };
}

function pickLevel(levels: readonly WeighedLevel[], uniform: number): WeighedLevel | undefined {
  let rest = uniform;
  for (const weighed of levels) {
    rest -= weighed.weight;
    if (rest < 0) return weighed;
  }
  return levels.at(-1);
}

type ExposedMonth = { readonly count: number; readonly exposure: number } | undefined;

/** Posterior weights from an even prior; candidates that explain the months fifty times worse are dropped. */
function weighedLevels(months: readonly ExposedMonth[]): readonly WeighedLevel[] {
  const prior = priorOf(months);
  const tried = discounts.flatMap((discount) =>
    dispersions.map((dispersion) => {
      const level = discountedLevel({ months, prior, discount, dispersion });
      return { level, log: logEvidence(months, { prior, discount, dispersion }) };
    }),
  );
  const best = Math.max(...tried.map(({ log }) => log));
  const kept = tried
    .filter(({ log }) => log > best - 4)
    .map(({ level, log }) => ({ level, weight: Math.exp(log - best) }));
  const total = kept.reduce((sum, { weight }) => sum + weight, 0);
  return kept.map(({ level, weight }) => ({ level, weight: weight / total }));
}

function priorOf(months: readonly ExposedMonth[]): { readonly shape: number; readonly exposure: number } {
  const first = months.filter((month) => month !== undefined).slice(0, firstMonths);
  const used = first.reduce((sum, { count }) => sum + count, 0);
  return { shape: priorShape, exposure: (priorShape * (first.length + 1)) / (used + priorShape) };
}

interface Candidate {
  readonly prior: { readonly shape: number; readonly exposure: number };
  readonly discount: number;
  readonly dispersion: number;
}

/** Log of the chance that the candidate gave to each month before it saw it; the first months only set it up. */
function logEvidence(months: readonly ExposedMonth[], { prior, discount, dispersion }: Candidate): number {
  let { shape, exposure } = prior;
  let log = 0;
  for (const month of months) {
    shape *= discount;
    exposure *= discount;
    if (month === undefined) continue;
    const mean = (shape / exposure) * month.exposure;
    log += logChance(month.count, mean, 1 / ((dispersion - 1) / mean + 1 / shape));
    shape += month.count / dispersion;
    exposure += month.exposure / dispersion;
  }
  return log;
}

/** Of a negative binomial, less the log factorial of the count, which all candidates share. */
function logChance(count: number, mean: number, size: number): number {
  let log = -size * Math.log1p(mean / size) - count * Math.log1p(size / mean);
  if (count > 40) return log + logGamma(size + count) - logGamma(size);
  for (let i = 0; i < count; i++) log += Math.log(size + i);
  return log;
}
