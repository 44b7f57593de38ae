import { type RegisterUnit, registerUnit } from "./register-unit";
import type { Scenario } from "./scenario";
import { type JobPlan, unitJobs } from "./unit-jobs";

/**
 * Which job comes when, in a few numbers per job, so that job numbers can follow the calendar while the stories
 * themselves are told again one by one.
 */
export interface DemoPlan {
  readonly jobs: number;
  /** Unit and position in the unit's list, in order of completion. */
  readonly at: (rank: number) => { readonly unit: number; readonly position: number };
  /** Job number of a unit's job. */
  readonly numberOf: (unit: number, position: number) => string;
}

/** Numbers below this belong to the jobs told in full. */
const firstDrawnNumber = 20_001;

/** Tells every unit once; `told` sees each. */
export function planDemo(scenario: Scenario, told: (unit: RegisterUnit, jobs: readonly JobPlan[]) => void): DemoPlan {
  const firstOf = new Int32Array(scenario.units + 1);
  const completed: number[] = [];
  const units: number[] = [];
  for (let index = 0; index < scenario.units; index++) {
    const unit = registerUnit(scenario, index);
    const jobs = unitJobs(scenario, unit);
    firstOf[index] = completed.length;
    for (const job of jobs) {
      completed.push(job.completedOn);
      units.push(index);
    }
    told(unit, jobs);
  }
  const order = Uint32Array.from(completed.keys()).sort((a, b) => (completed[a] ?? 0) - (completed[b] ?? 0) || a - b);
  const rankOf = new Uint32Array(order.length);
  for (const [rank, job] of order.entries()) rankOf[job] = rank;
  return {
    jobs: order.length,
    at: (rank) => {
      const job = order[rank] ?? 0;
      const unit = units[job] ?? 0;
      return { unit, position: job - (firstOf[unit] ?? 0) };
    },
    numberOf: (unit, position) => `J-${firstDrawnNumber + (rankOf[(firstOf[unit] ?? 0) + position] ?? 0)}`,
  };
}
