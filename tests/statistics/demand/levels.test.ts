import { expect, test } from "vitest";
import { countMean } from "@/lib/statistics/demand/count-distribution";
import { learnLevels } from "@/lib/statistics/demand/learn-levels";
import { levelForecast, levelPath, presentLevels } from "@/lib/statistics/demand/level-forecast";
import { type LevelModel, priorLevelModel } from "@/lib/statistics/demand/level-model";
import { seededDraws } from "@/lib/statistics/demand/seeded-draws";
import { randomSource } from "../random-source";

const small: LevelModel = {
  rungs: 2,
  ladders: 1,
  start: Float64Array.of(0.6, 0.4),
  moves: [Float64Array.of(0.9, 0.1), Float64Array.of(0.3, 0.7)],
  counts: [Float64Array.of(0.8, 0.15, 0.05), Float64Array.of(0.2, 0.5, 0.3)],
  learntFromMonths: 0,
};

/** By definition: chances of all paths of states through the months, added up by the state that they end in. */
function byAllPaths(months: readonly (number | undefined)[]): number[] {
  const ends = [0, 0];
  for (let path = 0; path < 2 ** months.length; path++) {
    let chance = 1;
    let before = 0;
    for (const [i, count] of months.entries()) {
      const state = (path >> i) & 1;
      chance *= i === 0 ? (small.start[state] ?? 0) : (small.moves[before]?.[state] ?? 0);
      if (count !== undefined) chance *= small.counts[state]?.[count] ?? 0;
      before = state;
    }
    ends[before] = (ends[before] ?? 0) + chance;
  }
  const total = (ends[0] ?? 0) + (ends[1] ?? 0);
  return ends.map((part) => part / total);
}

test.each([[[0, 2, 1, 0]], [[1, undefined, 2]], [[undefined, 0]]])(
  "levels after %j are those of all paths",
  (months) => {
    const present = presentLevels(small, months);
    byAllPaths(months).forEach((chance, state) => {
      expect(present[state]).toBeCloseTo(chance, 12);
    });
  },
);

// By hand: from state 0 for certain, next month is 0.9 and 0.1: a count of 0 has 0.9 × 0.8 + 0.1 × 0.2.
test("a forecast moves the levels first, and drawn futures agree with it", () => {
  const ask = { months: 2, known: true };
  const [next, after] = levelForecast(small, Float64Array.of(1, 0), ask);
  expect(next?.[0]).toBeCloseTo(0.74, 12);
  const draws = seededDraws(5);
  const paths = Array.from({ length: 20_000 }, () => levelPath(small, Float64Array.of(1, 0), ask, draws));
  const mean = paths.reduce((sum, path) => sum + (path[1] ?? 0), 0) / paths.length;
  expect(Math.abs(mean - countMean(after ?? Float64Array.of(1)))).toBeLessThan(0.02);
});

// Recovery of a known truth: parts that die for good after a while; without learning, levels are believed to come back.
test("from many parts it is learnt that demand ends and stays ended", () => {
  const random = randomSource(3);
  const series = Array.from({ length: 120 }, () => {
    const end = 8 + Math.floor(30 * random.uniform());
    return Array.from({ length: 40 }, (_, month) => (month < end ? random.poisson(2) : 0));
  });
  const learnt = learnLevels(series);
  const asleep = [...Array.from({ length: 12 }, () => 2), ...Array.from({ length: 6 }, () => 0)];
  const chanceOfUse = (model: LevelModel) => {
    const [first] = levelForecast(model, presentLevels(model, asleep), { months: 1, known: true });
    return 1 - (first?.[0] ?? 0);
  };
  expect(chanceOfUse(learnt)).toBeLessThan(0.5 * chanceOfUse(priorLevelModel(10)));
  expect(learnt.learntFromMonths).toBe(4800);
});

test("nothing to learn from leaves the prior, and a count that is none is refused with its place", () => {
  expect(learnLevels([]).learntFromMonths).toBe(0);
  expect(() => learnLevels([[1], [0, 0.5]])).toThrow(/series\[1\]\[1\]/);
});
