import { deserialize, serialize } from "node:v8";
import { expect, test } from "vitest";
import type { KeptQuarter } from "@/lib/signals/kept-quarter";
import { recordSince } from "@/lib/signals/record-since";
import type { Cohort, SignalRecord, WeeklyJobs } from "@/lib/signals/signal-record";
import { settledRun, weeklyRun } from "@/lib/signals/signal-run";
import { oldestWeek, settledUntil } from "@/lib/signals/weeks";
import { seededDraws } from "@/lib/statistics/demand/seeded-draws";
import { firstWeek } from "./made-record";

// The run of a week by what was kept of an earlier one of its quarter against the run that works all out, to the last digit.

const weeks = 13 * 39;
const models = ["A1", "A2", "A3", "B1", "B2", "C1", "C2"].map((number, modelId) => ({
  ...{ number, modelId, maker: number.slice(0, 1) },
  productType: modelId % 3 === 2 ? ("refrigerator" as const) : ("dishwasher" as const),
}));

/** Machines that come and go all the time, one model late; words, codes and delays of every kind, and a few troubles. */
function company(seed: number): Pick<SignalRecord, "cohorts" | "jobs"> {
  const draws = seededDraws(seed);
  const upTo = (n: number) => Math.floor(draws.uniform() * n);
  const cohorts: Cohort[] = models.flatMap((_, model) =>
    Array.from({ length: 20 }, (__, batch): Cohort => {
      const inServiceWeek = firstWeek + (model === 4 ? 330 : -200) + 26 * batch + upTo(26);
      const began = Math.max(firstWeek, inServiceWeek) + upTo(3);
      const units = 60 + upTo(60);
      const gone: [number, number][] = [began + 100 + upTo(100), began + 230 + upTo(100)].map((week) => [
        week,
        -upTo(30),
      ]);
      const madeHalf = upTo(5) === 0 ? undefined : Math.floor(inServiceWeek / 26);
      return { model, madeHalf, inServiceWeek, changes: [[began, units], ...gone] };
    }),
  );
  const jobs = cohorts.flatMap((cohort): WeeklyJobs[] => {
    const [[began, units] = [0, 0]] = cohort.changes;
    return Array.from({ length: firstWeek + weeks - began }, (_, i) => began + i).flatMap((failedWeek) => {
      const isBad = failedWeek > firstWeek + 380 + 20 * cohort.model && (cohort.model === 0 || cohort.model === 3);
      return Array.from({ length: draws.poisson(units * (isBad ? 0.02 : 0.006)) }, () => ({
        ...{ model: cohort.model, madeHalf: cohort.madeHalf, inServiceWeek: cohort.inServiceWeek, failedWeek },
        knownWeek: failedWeek + (upTo(40) === 0 ? upTo(40) : upTo(4)),
        // One component that only some models have.
        failed: [isBad ? "pump" : "board", "pump", cohort.model % 2 === 0 ? "element" : "burner", undefined][upTo(4)],
        symptom: ["noise", "no heat", undefined][upTo(3)],
        codes: [undefined, ["E1"], ["E1", "E2"]][upTo(3)],
        jobs: 1,
      }));
    });
  });
  return { cohorts, jobs };
}

/** As the end of a week knows it. */
function asOf({ cohorts, jobs }: ReturnType<typeof company>, lastWeek: number): SignalRecord {
  const first = Math.max(firstWeek, oldestWeek(lastWeek));
  return {
    firstWeek: first,
    lastWeek,
    models,
    cohorts: cohorts
      .map((cohort) => ({ ...cohort, changes: cohort.changes.filter(([week]) => week <= lastWeek) }))
      .filter(({ changes }) => changes.length > 0),
    jobs: jobs.filter(({ failedWeek, knownWeek }) => failedWeek >= first && knownWeek <= lastWeek),
    // As it is learnt anew each week, now longer and now shorter.
    knownWithin: lastWeek % 3 === 0 ? [0.4, 0.8, 0.95, 1] : [0.42, 0.81, 0.93, 0.98, 1],
  };
}

const copied = (kept: KeptQuarter): KeptQuarter => deserialize(serialize(kept));

test.each([1, 2])("week after week, over quarters and years: what was kept gives the same run (seed %i)", (seed) => {
  const all = company(seed);
  let kept: KeptQuarter | undefined;
  const counts = { same: 0, quarters: 0, cameUp: 0, listed: 0, years: new Set<number>() };
  for (let week = firstWeek + 13 * 35; week < firstWeek + weeks; week += 2) {
    const record = asOf(all, week);
    const whole = settledRun(record);
    if (whole.run.kind === "followed") counts.listed += whole.run.signals.length;
    counts.years.add(record.firstWeek);
    if (kept?.quarter.until === settledUntil(week)) {
      const weekly = weeklyRun(kept, recordSince(record, kept.quarter.until));
      if (weekly !== undefined) {
        expect(weekly).toEqual(whole.run);
        counts.same += 1;
        continue;
      }
      counts.cameUp += 1;
    } else counts.quarters += 1;
    kept = copied(whole.kept());
  }
  expect(counts.same).toBeGreaterThan(15);
  expect(counts.quarters).toBe(4);
  expect(counts.cameUp).toBeLessThan(5);
  expect(counts.listed).toBeGreaterThan(50);
  expect(counts.years.size).toBe(2);
});

// Calls of the settled weeks that are closed when their quarter is settled change nothing, and neither do new machines.
test("what comes after the quarter was settled leaves it as it was", () => {
  const all = company(3);
  const week = firstWeek + 13 * 36;
  const { quarter } = settledRun(asOf(all, week)).kept();
  const later = settledRun(asOf(all, week + 12)).kept().quarter;
  expect(later).toEqual(quarter);
  expect(settledRun(asOf(all, week + 13)).kept().quarter).not.toEqual(quarter);
});
