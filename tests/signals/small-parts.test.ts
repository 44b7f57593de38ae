import { describe, expect, test } from "vitest";
import { day } from "@/lib/calendar/day";
import { dayNumber } from "@/lib/calendar/day-number";
import { spreadBetweenGroups } from "@/lib/signals/between-groups";
import { baselineOf } from "@/lib/signals/block-sums";
import { comparedYears } from "@/lib/signals/compared-years";
import { knownByWeek } from "@/lib/signals/known-by-week";
import { outlookOf } from "@/lib/signals/outlook";
import { noSeason, seasonFactor, seasonOf } from "@/lib/signals/season";
import { toleratedRatio } from "@/lib/signals/tolerated-ratio";
import {
  ageBandOfWeeks,
  countsInTime,
  firstDayOf,
  lastDayOf,
  lastWholeWeek,
  oldestWeek,
  settledUntil,
  weekOf,
} from "@/lib/signals/weeks";
import { reportingDelay } from "@/lib/statistics/delay/reporting-delay";
import { seededDraws } from "@/lib/statistics/demand/seeded-draws";
import { expectPrinted } from "@/tests/reference/read-reference";

describe("weeks", () => {
  test("run from Monday to Sunday; a week is over at the end of its Sunday", () => {
    const sunday = dayNumber(day("2026-10-25"));
    expect([firstDayOf(weekOf(sunday)), lastDayOf(weekOf(sunday))]).toEqual([sunday - 6, sunday]);
    expect(lastWholeWeek(sunday)).toBe(weekOf(sunday));
    expect(lastWholeWeek(sunday - 1)).toBe(weekOf(sunday) - 1);
    expect(lastWholeWeek(sunday + 6)).toBe(weekOf(sunday));
  });

  // By hand: quarter 221 has the weeks 2873 to 2885, and 2860 is the first week of the one before it.
  test("a quarter long everything before the one before it is settled, and what is closed later counts nowhere", () => {
    expect([2872, 2873, 2885, 2886].map(settledUntil)).toEqual([2847, 2860, 2860, 2873]);
    const closed = (failedWeek: number, knownWeek: number) => countsInTime({ failedWeek, knownWeek });
    expect([closed(2859, 2872), closed(2847, 2872), closed(2859, 2873), closed(2860, 2873)]).toEqual([
      true,
      true,
      false,
      true,
    ]);
  });

  // By hand: years of four quarters begin with quarters 220 and 224, and eight years before them are quarters 188 and 192.
  test("records are cut a whole year at a time and never hold less than eight", () => {
    expect([13 * 220, 13 * 223 + 12, 13 * 224].map(oldestWeek)).toEqual([13 * 188, 13 * 188, 13 * 192]);
  });

  test("ages fall in quarters, halves, years and all from the sixteenth on", () => {
    expect([0, 12, 13, 25, 26, 51, 52, 103, 104].map(ageBandOfWeeks)).toEqual([0, 0, 1, 1, 2, 2, 3, 3, 4]);
    expect(ageBandOfWeeks(16 * 52)).toBe(ageBandOfWeeks(5000));
    expect(ageBandOfWeeks(-3)).toBe(0);
  });
});

test("a baseline is whole years that end a quarter before, three at most", () => {
  expect([0, 4, 5, 8, 9, 13, 40].map(baselineOf)).toEqual([
    undefined,
    undefined,
    { from: 0, until: 4 },
    { from: 3, until: 7 },
    { from: 0, until: 8 },
    { from: 0, until: 12 },
    { from: 27, until: 39 },
  ]);
});

describe("season", () => {
  const weeks = (mean: (week: number) => number, seed: number) => {
    const draws = seededDraws(seed);
    return Array.from({ length: 156 }, (_, week) => ({ week, observed: draws.poisson(mean(week)), expected: 1 }));
  };
  // By recovery: a wave of exp(0.4 cos) at 12 a week over three years; the standard error of its size is about 0.033.
  test("a known wave comes back", () => {
    const wave = (week: number) => Math.exp(0.4 * Math.cos((2 * Math.PI * (week - 20)) / (365.2425 / 7)));
    const season = seasonOf(weeks((week) => 12 * wave(week), 3));
    expect(Math.hypot(season.cosine, season.sine)).toBeGreaterThan(0.3);
    expect(Math.hypot(season.cosine, season.sine)).toBeLessThan(0.5);
    // Over a year the factor is 1 on average, so that the season moves nothing between years.
    const year = Array.from({ length: 521 }, (_, i) => seasonFactor(season, (i * 365.2425) / 7 / 521));
    expect(year.reduce((sum, factor) => sum + factor, 0) / year.length).toBeCloseTo(1, 6);
  });
  test("even counts, and less than two years of any, have none", () => {
    for (const seed of [1, 2, 3, 4, 5]) expect(seasonOf(weeks(() => 12, seed))).toEqual(noSeason);
    expect(seasonOf(weeks((week) => (week % 52 < 26 ? 5 : 50), 1).slice(0, 103))).toEqual(noSeason);
    expect(seasonFactor(noSeason, 17)).toBe(1);
  });
});

// By recovery: ratios drawn from a gamma of mean 1 and standard deviation 0.3, counts of mean 40 under them.
test("the spread between groups comes back, and is 0 where chance explains all", () => {
  const draws = seededDraws(9);
  const groups = (spread: number) =>
    Array.from({ length: 300 }, () => {
      const ratio = spread === 0 ? 1 : draws.gamma(1 / spread ** 2) * spread ** 2;
      return { observed: draws.poisson(40 * ratio), expected: 40, relativeVariance: 0 };
    });
  const found = spreadBetweenGroups(groups(0.3));
  expect(found).toBeGreaterThan(0.2);
  expect(found).toBeLessThan(0.36);
  expect(spreadBetweenGroups(groups(0))).toBeLessThan(0.08);
  expect(spreadBetweenGroups(groups(0.3).slice(0, 9))).toBe(0);
});

describe("what is tolerated", () => {
  const rest = (observed: number, expected: number) => ({
    observed,
    expected,
    relativeVariance: 0,
  });
  // By hand: spread 0.5 gives a prior of shape 4. Without history 1.5; with 6 of 16 (4 + 6 + √10) / 20 = 0.658, so 1;
  // with 16 of 16 (20 + √20) / 20 = 1.2236; with 60 of 16 more than the spread would excuse, so 1.5.
  test.each([
    [0, 0, 1.5],
    [6, 16, 1],
    [16, 16, 1.2236],
    [60, 16, 1.5],
  ])("%i of %i expected: %f", (observed, expected, ratio) => {
    expect(toleratedRatio(rest(observed, expected), 0.5)).toBeCloseTo(ratio, 4);
  });
  test("nothing, where groups do not differ and the expectation is sure", () => {
    expect(toleratedRatio(rest(9, 4), 0)).toBe(1);
  });
});

// By hand: half of the jobs are closed on the day, half a week later; on average 4 of 14 jobs of a week wait at its end.
test("the share of a week that is on record averages its seven days", () => {
  const delay = reportingDelay([
    { delay: 0, longestSeen: 50, count: 50 },
    { delay: 7, longestSeen: 50, count: 50 },
  ]);
  if (delay.kind !== "estimated") throw new Error("no delay");
  const known = knownByWeek(delay);
  expect(known[0]).toBeCloseTo(0.5, 9);
  expect(known[known.length - 1]).toBe(1);
  expect(known).toHaveLength(2);
  expect(knownByWeek(undefined)).toEqual([1]);
});

// P08: Welsh nickel workers, 137 observed and 24.19893 expected.
test("the ratio is the published one, and what is extra follows from it", () => {
  const { ratio, extraSoFar, extraAhead } = outlookOf({
    observed: 137,
    expected: 24.19893,
    expectedAhead: 10,
    level: 0.95,
  });
  expectPrinted("P08", { smr: ratio.point, lo: ratio.low, hi: ratio.high });
  expect(extraSoFar.point).toBeCloseTo(137 - 24.19893, 9);
  expect(extraAhead.low).toBeCloseTo(10 * (ratio.low - 1), 9);
});

test("years of age are told where both were watched, the first year as one", () => {
  const age = (band: number, own: number, others: number, othersUnitWeeks = 520) => ({
    band,
    own,
    ownUnitWeeks: 52,
    others,
    othersUnitWeeks,
  });
  const years = comparedYears([age(0, 1, 2), age(1, 1, 0), age(2, 0, 4), age(3, 5, 7), age(4, 1, 0, 0)]);
  expect(years).toEqual([
    { name: "1st year", own: 2, ownYears: 3, others: 6, othersYears: 30 },
    { name: "2nd year", own: 5, ownYears: 1, others: 7, othersYears: 10 },
  ]);
});
