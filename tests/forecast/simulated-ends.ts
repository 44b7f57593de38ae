import { endDemand } from "@/lib/forecast/end-demand";
import type { FleetToEnd, MachineCohort } from "@/lib/forecast/fleet/fleet-to-end";
import { PiecesTaken } from "@/lib/forecast/fleet/pieces-taken";
import { shareInsideCentral } from "@/lib/statistics/demand/count-band";
import { AgeTally } from "@/lib/statistics/life/lived-ages";
import { type RandomSource, randomSource } from "../statistics/random-source";

export interface EndPlan {
  readonly machines: number;
  /** Shapes and scales in months of the component's life and of how long machines stay. */
  readonly life: { readonly shape: number; readonly scale: number };
  readonly stay: { readonly shape: number; readonly scale: number };
  /** Share of failures that takes the part. */
  readonly share: number;
  readonly fleets: number;
  readonly futures: number;
  readonly seed: number;
}

/** Records begin so many months before today; machines are at most twice as old. */
const watched = 72;
const usedMonths = 24;

/** Share of simulated fleets whose need to the end, followed machine by machine, lies in the central 90 % of what was expected. */
export function endsInside(plan: EndPlan): number {
  const random = randomSource(plan.seed);
  let inside = 0;
  for (let number = 0; number < plan.fleets; number++) {
    const { fleet, failures, took, actual } = oneFleet(random, plan);
    const { demand } = endDemand({
      fleet,
      use: { failures, took, usesPart: { of: failures, counted: took }, perFailure: 1 },
      pieces: new PiecesTaken([1]),
      futures: plan.futures,
      seed: 1000 * plan.seed + number,
    });
    inside += shareInsideCentral(demand, 0.9, actual);
  }
  return inside / plan.fleets;
}

function oneFleet(random: RandomSource, { machines, life, stay, share }: EndPlan) {
  const draw = ({ shape, scale }: EndPlan["life"]) => scale * (-Math.log(random.uniform())) ** (1 / shape);
  const [lives, stays] = [new AgeTally(), new AgeTally()];
  const cohorts = new Map<number, Float64Array>();
  let [failures, took, actual] = [0, 0, 0];
  for (let placed = 0; placed < machines; ) {
    const age = 2 * watched * random.uniform();
    const ends = draw(stay);
    const from = Math.max(0, age - watched);
    if (ends <= from) continue;
    placed += 1;
    const seenTo = Math.min(age, ends);
    stays.add(from, seenTo, ends < age, 1);
    let began = 0;
    let fails = draw(life);
    for (; fails < ends; began = fails, fails += draw(life)) {
      const uses = random.uniform() < share;
      if (fails >= age) actual += uses ? 1 : 0;
      else if (fails >= from) {
        lives.add(Math.max(0, from - began), fails - began, true, 1);
        if (fails >= age - usedMonths) [failures, took] = [failures + 1, took + (uses ? 1 : 0)];
      }
      if (fails >= seenTo && began < seenTo) note(seenTo);
    }
    if (began < seenTo) note(seenTo);
    function note(end: number): void {
      // A failure before records begin was not seen: for all that is known, the life began with the machine.
      const known = began < from ? 0 : began;
      lives.add(Math.max(0, from - known), end - known, false, 1);
      if (ends < age) return;
      const cohort = Math.floor(age / 6);
      const running = cohorts.get(cohort) ?? new Float64Array(2 * watched + 1);
      running[Math.floor(age - known)] = (running[Math.floor(age - known)] ?? 0) + 1;
      cohorts.set(cohort, running);
    }
  }
  const fleet: FleetToEnd = {
    lives: lives.counts(),
    stays: stays.counts(),
    cohorts: [...cohorts].map(([cohort, running]): MachineCohort => ({ machineAge: 6 * cohort + 3, running })),
  };
  return { fleet, failures, took, actual };
}
