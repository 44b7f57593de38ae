import { expect, test } from "vitest";
import { type CellWeeks, cellWeeks } from "@/lib/signals/cell-weeks";
import { judgeCell, ratioOf } from "@/lib/signals/evidence-of-luck";
import { followCell } from "@/lib/signals/follow-cell";
import type { SignalRecord } from "@/lib/signals/signal-record";
import { seededDraws } from "@/lib/statistics/demand/seeded-draws";
import { firstWeek, madeRecord } from "./made-record";

const models = Array.from({ length: 12 }, (_, i) => ({
  number: `M${i}`,
  maker: `Maker ${i % 4}`,
  units: 1000,
  rate: () => 0,
}));
const weeks = 260;
const mean = 2;

/** Weekly counts of mean 2 in every model; where they clump, negative binomial with so many times the variance. */
function recordOf(seed: number, clumped: number): SignalRecord {
  const draws = seededDraws(seed);
  const jobs = models.flatMap((_, model) =>
    Array.from({ length: weeks }, (__, week) => {
      const size = mean / (clumped - 1);
      const level = clumped === 1 ? mean : (mean * draws.gamma(size)) / size;
      return {
        ...{ model, madeHalf: 90, inServiceWeek: firstWeek, failedWeek: firstWeek + week, knownWeek: firstWeek + week },
        ...{ failed: "pump", symptom: undefined, jobs: draws.poisson(level) },
      };
    }).filter(({ jobs: count }) => count > 0),
  );
  return { ...madeRecord(models, weeks, seed), jobs };
}

const ofModels = (record: SignalRecord) =>
  cellWeeks(record, 1).filter(({ key }) => key.model !== undefined && key.madeHalf === undefined);

// By recovery: twelve models over three years are 12 x 156 weeks, from which the ratio is known to about 0.07.
test.each([1.5, 3])("jobs that come in clumps are seen to: variance %f times the mean", (clumped) => {
  const newest = [1, 2].map((seed) => ofModels(recordOf(seed, clumped))[0]?.clumped.at(-1) ?? 0);
  for (const found of newest) expect(Math.abs(found / clumped - 1)).toBeLessThan(0.2);
});

test("where chance explains what is seen, nothing is said to clump", () => {
  const seen = [1, 2].flatMap((seed) => ofModels(recordOf(seed, 1))[0]?.clumped ?? []);
  expect(seen.filter((found) => found === 1).length / seen.length).toBeGreaterThan(0.9);
  expect(Math.max(...seen)).toBeLessThan(1.15);
});

/** Cells in which, at some week's end, luck would bring so high a sum in less than one year of 100. */
function crying(cells: readonly CellWeeks[]): number {
  const at = Array.from({ length: weeks - 70 }, (_, i) => firstWeek + 70 + i);
  return cells.filter((cell) =>
    followCell(cell, { at, knownWithin: [1], ratio: ratioOf(cell.key) }).some(
      (standing) => standing !== undefined && judgeCell({ key: cell.key, weeks: () => cell, standing }).chance < 0.01,
    ),
  ).length;
}

// By simulation: with 12 cells over four years not one is due by luck (12 x 3.7 x 0.01 = 0.4) where the chance is what it says.
test("clumps do not cry wolf once they are seen, and do while they are not", () => {
  const cells = [5].flatMap((seed) => ofModels(recordOf(seed, 3)));
  expect(crying(cells.map((cell) => ({ ...cell, clumped: [] })))).toBeGreaterThan(5);
  expect(crying(cells)).toBeLessThanOrEqual(2);
});
