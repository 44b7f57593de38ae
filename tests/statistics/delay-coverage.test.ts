import { expect, test } from "vitest";
import { correctedCount } from "@/lib/statistics/delay/corrected-count";
import { type DelayCount, reportingDelay } from "@/lib/statistics/delay/reporting-delay";
import { shareWithin } from "@/lib/statistics/delay/share-within";
import { randomSource } from "./random-source";

// By simulation with a known delay: events come at a known pace, each is reported after a known wait, and only what is
// reported by the last day may be used. The final count of the last five weeks must lie in the range.

const watchedDays = 400;
const weeks = 5;
const level = 0.95;
/** Chance of each delay in days: half of all within about 8 days, some after 40. */
const law = Array.from({ length: 46 }, (_, delay) => Math.exp(-delay / 9) * (delay === 0 ? 0.3 : 1));
const lawSum = law.reduce((sum, chance) => sum + chance, 0);

const trueWeek = law.slice(0, 8).reduce((sum, chance) => sum + chance, 0) / lawSum;

interface Trial {
  readonly final: number;
  readonly onRecord: number;
  readonly corrected: number;
  readonly lo: number;
  readonly hi: number;
  /** Whether the range of the share reported within a week holds the true share. */
  readonly weekHeld: boolean;
}

function trial(seed: number, paceOn: (age: number) => number): Trial {
  const { poisson } = randomSource(seed);
  const reports: DelayCount[] = [];
  const onRecord = Array.from({ length: weeks }, () => 0);
  let final = 0;
  for (let age = 0; age < watchedDays; age++) {
    law.forEach((chance, delay) => {
      const count = poisson((paceOn(age) * chance) / lawSum);
      const week = Math.floor(age / 7);
      if (week < weeks) final += count;
      if (delay > age || count === 0) return;
      reports.push({ delay, longestSeen: age, count });
      if (week < weeks) onRecord[week] = (onRecord[week] ?? 0) + count;
    });
  }
  const delay = reportingDelay(reports);
  if (delay.kind !== "estimated") throw new Error("something is reported in 400 days");
  const periods = onRecord.map((count, week) => ({
    ages: Array.from({ length: 7 }, (_, i) => 7 * week + i),
    reports: count,
  }));
  const result = correctedCount({ periods, delay, fewestTogether: 10, level });
  if (result.kind !== "corrected") throw new Error(`expected a corrected count, got ${result.kind}`);
  const { corrected, lo, hi } = result;
  const week = shareWithin(delay, 7, level);
  const weekHeld = week.low <= trueWeek && trueWeek <= week.high;
  return { weekHeld, final, onRecord: onRecord.reduce((sum, count) => sum + count, 0), corrected, lo, hi };
}

const rounds = 600;
const shareOf = (trials: readonly Trial[], holds: (one: Trial) => boolean) => trials.filter(holds).length / rounds;

// 600 rounds put the share within 2.7 points of a true 95 % in 99.7 % of runs. Counts are whole, so it may lie above.
test.each([
  ["an even 0.4 a day", () => 0.4],
  ["an even 2 a day", () => 2],
  ["an even 12 a day", () => 12],
  ["12 a day rising by a quarter over the five weeks", (age: number) => 12 * (1 + 0.25 * Math.max(0, 1 - age / 35))],
] as const)("with %s the range holds the final count", (_, paceOn) => {
  const trials = Array.from({ length: rounds }, (_none, seed) => trial(seed + 1, paceOn));
  expect(shareOf(trials, ({ final, lo, hi }) => final >= lo && final <= hi)).toBeGreaterThan(0.923);
  expect(shareOf(trials, ({ weekHeld }) => weekHeld)).toBeGreaterThan(0.923);
  // Each side may miss about half of what both may.
  expect(shareOf(trials, ({ final, hi }) => final > hi)).toBeLessThan(0.045);
  expect(shareOf(trials, ({ final, lo }) => final < lo)).toBeLessThan(0.045);
  const sum = (pick: (one: Trial) => number) => trials.reduce((total, one) => total + pick(one), 0);
  expect(Math.abs(sum(({ corrected }) => corrected) / sum(({ final }) => final) - 1)).toBeLessThan(0.03);
  // What is on record alone is far short: the correction has something to do.
  expect(sum(({ onRecord }) => onRecord) / sum(({ final }) => final)).toBeLessThan(0.8);
});
