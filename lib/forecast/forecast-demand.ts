import { type CountBand, countBand } from "@/lib/statistics/demand/count-band";
import { type CountDistribution, countMean } from "@/lib/statistics/demand/count-distribution";
import { learnLevels, type MonthlyCounts } from "@/lib/statistics/demand/learn-levels";
import type { LevelModel } from "@/lib/statistics/demand/level-model";
import { requireWholeNumber } from "@/lib/statistics/require";
import { type BackTest, backTest } from "./back-test";
import { chooseMethod } from "./choose-method";
import { type DemandFuture, type DemandMethod, type DemandMethodKey, knownCounts } from "./demand-method";
import { countingLots, inLots, lotOf } from "./in-lots";
import { ownLevel, ownLevelWithSeason } from "./own-level";
import { seasonIndex } from "./season-index";
import { fitsLevels, sharedLevels } from "./shared-levels";
import { simpleMethods } from "./simple-methods";

/** What all parts together say about how demand lasts and ends: today's, and that of the first back-tested month. */
export interface DemandKnowledge {
  readonly now: LevelModel;
  /** Learnt without the months that the back-test judges, so that they are not known to it beforehand. */
  readonly beforeTest: LevelModel;
}

export interface ForecastQuestion {
  /** Months ahead, 1 to 24. */
  readonly horizon: number;
  readonly knowledge: DemandKnowledge;
  /** From the machines that carry the part, where they tell of it. */
  readonly fleet?: DemandMethod | undefined;
}

export type PartForecast =
  | {
      readonly kind: "forecast";
      readonly months: readonly ForecastMonth[];
      readonly method: DemandMethodKey;
      /** Why this method, in a sentence. */
      readonly reason: string;
      readonly test: BackTest;
      /** What is weak about the history, if anything. */
      readonly basis: "tested" | "few-months" | "never-used";
      readonly future: DemandFuture;
    }
  | { readonly kind: "no-months" };

export interface ForecastMonth {
  readonly distribution: CountDistribution;
  readonly mean: number;
  readonly band60: CountBand;
  readonly band90: CountBand;
}

/** Starting points and months ahead of every back-test. */
export const testSettings = { origins: 10, horizon: 6 } as const;

/**
 * Demand for one part in each of the next months, as whole distributions, from its own months and from what all parts
 * say; with the back-test of every method on this part and the method that it chose.
 * @param history parts used in each month, oldest first; undefined where a month is missing
 * @returns "no-months" where no month is known; "few-months" and "never-used" forecasts lean on the other parts
 * @throws RangeError for a count that is no whole number, or a horizon outside 1..24
 * Checked: tests/forecast/forecast-demand.test.ts, and on 1,256 real parts by `npm run bench -- forecast`.
 */
export function forecastDemand(history: MonthlyCounts, { horizon, knowledge, fleet }: ForecastQuestion): PartForecast {
  requireWholeNumber("horizon", horizon);
  if (horizon < 1 || horizon > 24) throw new RangeError(`horizon must lie in 1..24 months; it is ${horizon}`);
  const counts = knownCounts(history);
  if (counts.length === 0) return { kind: "no-months" };
  const shared = fitsLevels(knowledge.now, counts) && fitsLevels(knowledge.beforeTest, counts);
  // A part too seldom used to show a season would only be tested twice by the same method.
  const seasonal = seasonIndex(history) !== undefined;
  const ofFleet = fleet === undefined ? [] : [fleet];
  const methods = [...ofFleet, ...demandMethods(shared ? knowledge.beforeTest : undefined)].filter(
    ({ key }) => seasonal || key !== "own-level-with-season",
  );
  const test = backTest(history, { methods, ...testSettings });
  const { key, reason } = chooseMethod(test, fleet?.key ?? (shared ? "shared-levels" : "own-level"));
  const method =
    [...ofFleet, ...demandMethods(shared ? knowledge.now : undefined)].find((one) => one.key === key) ?? ownLevel;
  const future = method.prepare(history)(history.length);
  return {
    kind: "forecast",
    months: future.months(horizon).map(forecastMonth),
    method: key,
    reason,
    test,
    basis: counts.every((count) => count === 0) ? "never-used" : test.kind === "tested" ? "tested" : "few-months",
    future,
  };
}

/** Every method that is tested; levels as all parts have them only where there is a model with room for the part. */
export function demandMethods(levels: LevelModel | undefined): readonly DemandMethod[] {
  const ours = [...(levels === undefined ? [] : [sharedLevels(levels)]), ownLevel, ownLevelWithSeason];
  return [...ours.map(countingLots), ...simpleMethods];
}

/** Learns once from the months of all parts; all histories end with the same month. */
export function learnDemand(inPieces: readonly MonthlyCounts[]): DemandKnowledge {
  const histories = inPieces.map((history) => inLots(history, lotOf(history)));
  const room = inPieces.reduce((largest, history) => Math.max(largest, ...knownCounts(history)), 0);
  const before = histories.map((history) => history.slice(0, Math.max(0, history.length - testSettings.origins)));
  const beforeTest = learnLevels(before, { room });
  return { now: learnLevels(histories, { room, from: beforeTest }), beforeTest };
}

function forecastMonth(distribution: CountDistribution): ForecastMonth {
  return {
    distribution,
    mean: countMean(distribution),
    band60: countBand(distribution, 0.6),
    band90: countBand(distribution, 0.9),
  };
}
