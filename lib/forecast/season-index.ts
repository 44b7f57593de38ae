import type { MonthlyCounts } from "@/lib/statistics/demand/learn-levels";

/** Months before a season can be told from chance: each month of the year twice. */
const fewestMonthsForSeason = 24;
/** And parts used, two for each month of the year. */
const fewestUsedForSeason = 24;
/** Parts that a month of the year must have used before its own share counts as much as an even year. */
const evenYearWorth = 12;

/**
 * How much each month of the year takes, 1 on average: its total over that of an even year, both with a dozen parts
 * of an even year added, so that a few parts make no season.
 * @param history oldest first; position 0 gives index 0
 * @returns twelve factors, or undefined where months or parts are too few
 */
export function seasonIndex(history: MonthlyCounts): readonly number[] | undefined {
  const known = history.filter((count) => count !== undefined);
  if (known.length < fewestMonthsForSeason) return undefined;
  const total = known.reduce((sum, count) => sum + count, 0);
  if (total < fewestUsedForSeason) return undefined;
  const mean = total / known.length;
  const raw = Array.from({ length: 12 }, (_, month) => {
    const counts = history.filter((count, i) => i % 12 === month && count !== undefined);
    const used = counts.reduce<number>((sum, count) => sum + (count ?? 0), 0);
    return (used + evenYearWorth) / (counts.length * mean + evenYearWorth);
  });
  const average = raw.reduce((sum, factor) => sum + factor, 0) / 12;
  return raw.map((factor) => factor / average);
}
