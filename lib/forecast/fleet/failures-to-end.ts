import type { WeibullLife } from "@/lib/statistics/life/weibull-posterior";
import type { MachineCohort } from "./fleet-to-end";

/** Time is cut into half-years; what fails within one is taken as failing in its middle. Own choice, no source. */
export const stepMonths = 6;
/** Components of one year of age together. Own choice, no source. */
const ageMonths = 12;

/**
 * Failures expected until fewer than half a machine is left, and the steps until then: what runs fails by its age, what
 * replaces it begins anew, and all of it ends with its machine.
 * @param lives of the component and of the machines
 */
export function failuresToEnd(
  cohorts: readonly MachineCohort[],
  [life, stay]: readonly [WeibullLife, WeibullLife],
  mostSteps: number,
): { readonly failures: number; readonly steps: number } {
  const { weights, steps } = machinesLeft(cohorts, stay, mostSteps);
  const renewals = renewalsOfNew(life, steps);
  let failures = 0;
  for (const [age, left] of weights) {
    const first = firstFailures(life, age, steps);
    for (let step = 0; step < steps; step++) {
      let failing = first[step] ?? 0;
      for (let from = 0; from <= step; from++) failing += (first[from] ?? 0) * (renewals[step - from] ?? 0);
      failures += failing * (left[step] ?? 0);
    }
  }
  return { failures, steps };
}

/** Components of each age that are still in a machine in the middle of each step. */
function machinesLeft(cohorts: readonly MachineCohort[], stay: WeibullLife, mostSteps: number) {
  const weights = new Map<number, Float64Array>();
  const all = new Float64Array(mostSteps);
  for (const { machineAge, running } of cohorts) {
    const gone = hazard(stay, machineAge);
    const left = Float64Array.from({ length: mostSteps }, (_, step) =>
      Math.exp(gone - hazard(stay, machineAge + (step + 0.5) * stepMonths)),
    );
    for (const [month, count] of running.entries()) {
      if (count === 0) continue;
      const age = ageMonths * (Math.floor(month / ageMonths) + 0.5);
      const sums = weights.get(age) ?? new Float64Array(mostSteps);
      weights.set(age, sums);
      for (let step = 0; step < mostSteps; step++) {
        const here = count * (left[step] ?? 0);
        sums[step] = (sums[step] ?? 0) + here;
        all[step] = (all[step] ?? 0) + here;
      }
    }
  }
  const end = all.findIndex((count) => count < 0.5);
  return { weights, steps: end < 0 ? mostSteps : end };
}

/** Chance that what has an age now fails for the first time in each step. */
function firstFailures(life: WeibullLife, age: number, steps: number): Float64Array {
  const lived = hazard(life, age);
  let before = 1;
  return Float64Array.from({ length: steps }, (_, step) => {
    const after = Math.exp(lived - hazard(life, age + (step + 1) * stepMonths));
    const failing = before - after;
    before = after;
    return failing;
  });
}

/** Failures expected of what is new in the middle of a step: in the rest of that step, and in each after it. */
function renewalsOfNew(life: WeibullLife, steps: number): Float64Array {
  const first = Float64Array.from({ length: steps }, (_, step) => {
    const [from, to] = [Math.max(0, step - 0.5) * stepMonths, (step + 0.5) * stepMonths];
    return Math.exp(-hazard(life, from)) - Math.exp(-hazard(life, to));
  });
  const renewals = new Float64Array(steps);
  const again = 1 - (first[0] ?? 0);
  for (let step = 0; step < steps; step++) {
    let failing = first[step] ?? 0;
    for (let from = 1; from <= step; from++) failing += (first[from] ?? 0) * (renewals[step - from] ?? 0);
    renewals[step] = failing / again;
  }
  return renewals;
}

function hazard({ shape, rate }: WeibullLife, age: number): number {
  return rate * age ** shape;
}
