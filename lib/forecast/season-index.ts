import type { MonthlyCounts } from "@/lib/statistics/demand/learn-levels";
import { testedSeason } from "./tested-season";

/** Months before a season can be told from chance: each month of the year twice. */
const fewestMonthsForSeason = 24;
/** And parts used, two for each month of the year. */
const fewestUsedForSeason = 24;
/** A season that is not there is taken for one this often. */
const testLevel = 0.05;
/** Parts that a month of the year must have used before its own share counts as much as an even year. */
const evenYearWorth = 12;

/**
 * How much each month of the year takes, 1 on average: its total over that of an even year, both with a dozen parts
 * of an even year added, so that a few parts make no season. Only where the counts follow the year by test: an index
 * of chance alone costs more than it gains.
 * @param history oldest first; position 0 gives index 0
 * @returns twelve factors, or undefined where months or parts are too few, or the test finds no season
 */
export function seasonIndex(history: MonthlyCounts): readonly number[] | undefined {
  const known = history.filter((count) => count !== undefined);
  if (known.length < fewestMonthsForSeason) return undefined;
  const total = known.reduce((sum, count) => sum + count, 0);
  if (total < fewestUsedForSeason) return undefined;
  const mean = total / known.length;
  const byMonth = Array.from({ length: 12 }, (_, month) =>
    history.filter((count, i) => i % 12 === month && count !== undefined),
  );
  const spread = known.reduce((sum, count) => sum + (count - mean) ** 2, 0) / (known.length - 1);
  const tested = testedSeason({
    events: byMonth.map((counts) => counts.reduce<number>((sum, count) => sum + (count ?? 0), 0)),
    exposure: byMonth.map((counts) => Math.max(counts.length, 1e-9)),
    dispersion: Math.max(1, spread / mean),
    level: testLevel,
  });
  if (tested.kind !== "season") return undefined;
  const raw = byMonth.map((counts) => {
    const used = counts.reduce<number>((sum, count) => sum + (count ?? 0), 0);
    return (used + evenYearWorth) / (counts.length * mean + evenYearWorth);
  });
  const average = raw.reduce((sum, factor) => sum + factor, 0) / 12;
  return raw.map((factor) => factor / average);
}
