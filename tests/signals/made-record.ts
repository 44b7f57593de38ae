import type { Cohort, SignalRecord, WeeklyJobs } from "@/lib/signals/signal-record";
import { seededDraws } from "@/lib/statistics/demand/seeded-draws";

/** First week of the made records: a block of 13 weeks begins with it. */
export const firstWeek = 13 * 200;

export interface MadeModel {
  readonly number: string;
  readonly maker: string;
  readonly units: number;
  /** Failures per unit-week by age in weeks and calendar week. */
  readonly rate: (age: number, week: number) => number;
  readonly symptom?: string;
}

/** Units that all enter service at the start of the record and stay, and failures drawn week by week. */
export function madeRecord(
  models: readonly MadeModel[],
  weeks: number,
  seed: number,
  component = "pump",
): SignalRecord {
  const draws = seededDraws(seed);
  const cohorts: Cohort[] = models.map(({ units }, model) => ({
    model,
    madeHalf: 90,
    inServiceWeek: firstWeek,
    changes: [[firstWeek, units]],
  }));
  const jobs: WeeklyJobs[] = [];
  models.forEach(({ units, rate, symptom }, model) => {
    for (let week = firstWeek; week < firstWeek + weeks; week++) {
      const count = draws.poisson(units * rate(week - firstWeek, week));
      if (count === 0) continue;
      jobs.push({
        model,
        madeHalf: 90,
        inServiceWeek: firstWeek,
        failedWeek: week,
        knownWeek: week,
        failed: component,
        symptom,
        jobs: count,
      });
    }
  });
  return {
    firstWeek,
    lastWeek: firstWeek + weeks - 1,
    models: models.map(({ number, maker }, i) => ({ modelId: i + 1, number, maker, productType: "dishwasher" })),
    cohorts,
    jobs,
    knownWithin: [1],
  };
}
