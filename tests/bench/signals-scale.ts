// What it costs to follow every cell of a very large company, once its rows are read; with the reading: signals-weekly.ts.
import { day } from "@/lib/calendar/day";
import { dayNumber } from "@/lib/calendar/day-number";
import { productTypeKeys } from "@/lib/domain/product-type";
import { recordSince } from "@/lib/signals/record-since";
import type { Cohort, SignalRecord, WeeklyJobs } from "@/lib/signals/signal-record";
import { settledRun, signalRun, weeklyRun } from "@/lib/signals/signal-run";
import { ageBandOfWeeks, lastWholeWeek } from "@/lib/signals/weeks";
import { scenarioOf } from "@/synthetic-data/scenario";
import { minimalStandard } from "../minimal-standard";
import { say } from "./say";
import { drawCompany } from "./signals-company";

const models = 500;
const components = 60;
const symptoms = 20;
const makers = 40;
/** A model is sold for three years, and records go back eight. */
const soldFor = 156;
const recordWeeks = 416;
const lastWeek = lastWholeWeek(dayNumber(day("2026-10-31")));
const firstWeek = lastWeek - recordWeeks + 1;

export function benchSignalsScale(units = 5_000_000, jobs = 1_000_000): void {
  benchDemo();
  for (const share of [0.1, 1]) {
    const record = largeRecord(units * share, jobs * share);
    const [settled, all] = timed(() => settledRun(record));
    const { run } = settled;
    if (run.kind !== "followed") throw new Error("eight years are enough to follow");
    say(
      `${units * share} units, ${jobs * share} jobs, ${models} models of ${components} components: ${run.cells} cells (wanted for all: 60 s)`,
      `${all.toFixed(1)} s of processor time once the rows are read; ${run.signals.length} listed where nothing is wrong`,
    );
    const kept = settled.kept();
    const since = recordSince(record, kept.quarter.until);
    const [, week] = timed(() => weeklyRun(kept, since));
    say(
      "  a week, by what was kept of the quarter (wanted: 5 s, with the reading of signals-weekly)",
      `${week.toFixed(1)} s`,
    );
  }
}

/** With the processor seconds that it took. */
function timed<T>(work: () => T): [T, number] {
  const before = process.cpuUsage();
  const done = work();
  const { user, system } = process.cpuUsage(before);
  return [done, (user + system) / 1e6];
}

/** The invented company at its own size, in a process that has not done it before. */
function benchDemo(): void {
  const { record } = drawCompany(scenarioOf({ seed: 1, size: 1, until: "2026-10-31" }));
  const [run, seconds] = timed(() => signalRun(record));
  if (run.kind !== "followed") throw new Error("the invented company has years enough to follow");
  say(
    `all ${run.cells} cells of the invented company (wanted: 1 s)`,
    `${seconds.toFixed(2)} s of processor time, the first run in its process`,
  );
}

/** Rates that differ by component and rise with age, the same for every model: nothing in it is wrong. */
export function largeRecord(units: number, jobs: number): SignalRecord {
  const next = minimalStandard(20261125);
  const cohorts: Cohort[] = [];
  const perCohort = Math.max(1, Math.round(units / (models * soldFor)));
  const soldFrom = Array.from({ length: models }, () => firstWeek - 156 + Math.floor(next() * (recordWeeks - 26)));
  for (let model = 0; model < models; model++) {
    for (let sold = 0; sold < soldFor; sold++) {
      const inServiceWeek = (soldFrom[model] ?? 0) + sold;
      if (inServiceWeek > lastWeek) break;
      const began = Math.max(inServiceWeek, firstWeek);
      const left = began + 26 + Math.floor(next() * 400);
      const leaving = Math.floor(perCohort / 5);
      const changes: [number, number][] = [[began, perCohort]];
      if (left <= lastWeek && leaving > 0) changes.push([left, -leaving]);
      cohorts.push({ model, madeHalf: Math.floor((inServiceWeek - 6) / 26), inServiceWeek, changes });
    }
  }
  return {
    firstWeek,
    lastWeek,
    models: Array.from({ length: models }, (_, modelId) => ({
      modelId,
      number: `M${modelId}`,
      maker: `Maker ${modelId % makers}`,
      productType: productTypeKeys[modelId % 7] ?? "dishwasher",
    })),
    cohorts,
    jobs: jobsOf(cohorts, jobs, next),
    knownWithin: [0.6, 0.85, 0.95, 1],
  };
}

function jobsOf(cohorts: readonly Cohort[], jobs: number, next: () => number): WeeklyJobs[] {
  const made: WeeklyJobs[] = [];
  while (made.length < jobs) {
    const cohort = cohorts[Math.floor(next() * cohorts.length)];
    if (cohort === undefined) break;
    const { model, madeHalf, inServiceWeek } = cohort;
    const failedWeek = Math.max(inServiceWeek, firstWeek) + Math.floor(next() * recordWeeks);
    // Half as often when new as when old.
    if (failedWeek > lastWeek || next() > 0.5 + ageBandOfWeeks(failedWeek - inServiceWeek) / 20) continue;
    const component = Math.floor(components * next() ** 2);
    made.push({
      model,
      madeHalf,
      inServiceWeek,
      failedWeek,
      knownWeek: Math.min(lastWeek, failedWeek + (next() < 0.6 ? 0 : 1)),
      failed: `part_${component}`,
      symptom: `symptom_${Math.floor(symptoms * next())}`,
      jobs: 1,
    });
  }
  return made;
}
