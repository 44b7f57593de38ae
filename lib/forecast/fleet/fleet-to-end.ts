import type { ExposureCells } from "@/lib/failures/cells";
import { inFleet } from "@/lib/failures/groups";
import { daysPerMonth } from "@/lib/failures/rate-question";
import type { LifeQuestion } from "@/lib/failures/visit-spells";
import { AgeTally, type LivedAges } from "@/lib/statistics/life/lived-ages";
import { componentLives, runningAges } from "./fleet-record";

/** What is known of a fleet that is followed to its end. Ages in months. */
export interface FleetToEnd {
  readonly lives: LivedAges;
  /** How long the machines themselves stay: "failed" is retired. */
  readonly stays: LivedAges;
  readonly cohorts: readonly MachineCohort[];
}

/** Machines of about one age, and the ages of what they carry. */
export interface MachineCohort {
  readonly machineAge: number;
  /** Components by age in months. */
  readonly running: Float64Array;
}

/** Machines of one half-year of age together: finer cohorts cost time and change nothing that could be seen. */
const cohortMonths = 6;

export function fleetToEnd(cells: ExposureCells, question: LifeQuestion): FleetToEnd {
  const { until } = question;
  const asked = new Set(
    cells.models.filter((model) => inFleet(cells, model, { where: question.where })).map(({ modelId }) => modelId),
  );
  const stays = new AgeTally(daysPerMonth);
  for (const { modelId, inServiceOn, observedFrom, retiredOn, units } of cells.windows) {
    const end = Math.min(retiredOn ?? until, until);
    if (!asked.has(modelId) || end <= observedFrom) continue;
    stays.add(observedFrom - inServiceOn, end - inServiceOn, retiredOn !== undefined && retiredOn < until, units);
  }
  const cohortOf = (inServiceOn: number) => Math.floor((until - inServiceOn) / daysPerMonth / cohortMonths);
  const windows = grouped(cells.windows, ({ inServiceOn }) => cohortOf(inServiceOn));
  const jobs = grouped(cells.jobs, ({ place }) => (place === undefined ? undefined : cohortOf(place.inServiceOn)));
  return {
    lives: componentLives(cells, question),
    stays: stays.counts(),
    cohorts: [...windows].map(([cohort, own]) => ({
      machineAge: (cohort + 0.5) * cohortMonths,
      running: runningAges({ ...cells, windows: own, jobs: jobs.get(cohort) ?? [] }, question),
    })),
  };
}

function grouped<T>(items: readonly T[], keyOf: (item: T) => number | undefined): ReadonlyMap<number, readonly T[]> {
  const groups = new Map<number, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    if (key === undefined) continue;
    const group = groups.get(key) ?? [];
    group.push(item);
    groups.set(key, group);
  }
  return groups;
}
