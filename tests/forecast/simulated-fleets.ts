import { FleetFailures } from "@/lib/forecast/fleet/fleet-failures";
import { sumOfPaths } from "@/lib/forecast/paths";
import { shareInsideCentral } from "@/lib/statistics/demand/count-band";
import type { CountDistribution } from "@/lib/statistics/demand/count-distribution";
import { AgeTally, type LivedAges } from "@/lib/statistics/life/lived-ages";
import { type RandomSource, randomSource } from "../statistics/random-source";

export interface FleetPlan {
  readonly shape: number;
  /** Failures expected before the forecast. */
  readonly failures: number;
  readonly fleets: number;
  readonly futures: number;
  readonly seed: number;
}

const units = 300;
const oldest = 60;
const horizon = 6;
const fewestFailures = 5;

/** Share of simulated fleets whose failures of the next half year lie in the central 90 % of what was forecast. */
export function fleetsInside({ shape, failures, fleets, futures, seed }: FleetPlan): number {
  const random = randomSource(seed);
  // By integrating the cumulative hazard over ages spread evenly from 0 to the oldest.
  const scale = ((units * oldest ** shape) / (shape + 1) / failures) ** (1 / shape);
  const life = () => scale * (-Math.log(random.uniform())) ** (1 / shape);
  let [inside, tried] = [0, 0];
  for (let fleet = 0; fleet < fleets; fleet++) {
    const { lives, running, actual } = oneFleet(random, life);
    if (lives.failed.reduce((sum, count) => sum + count, 0) < fewestFailures) continue;
    tried += 1;
    inside += shareInsideCentral(forecastOf(lives, running, { futures, seed: 1000 * seed + fleet }), 0.9, actual);
  }
  return inside / tried;
}

function oneFleet(random: RandomSource, life: () => number) {
  const lives = new AgeTally();
  const running = new Float64Array(oldest + 1);
  let actual = 0;
  for (let unit = 0; unit < units; unit++) {
    let age = oldest * random.uniform();
    let spell = life();
    for (; spell < age; age -= spell, spell = life()) lives.add(0, spell, true, 1);
    lives.add(0, age, false, 1);
    running[Math.floor(age)] = (running[Math.floor(age)] ?? 0) + 1;
    for (let at = spell - age; at < horizon; at += life()) actual += 1;
  }
  return { lives: lives.counts(), running, actual };
}

function forecastOf(
  lives: LivedAges,
  running: Float64Array,
  { futures, seed }: { readonly futures: number; readonly seed: number },
): CountDistribution {
  const known = { lives, left: { machines: 0, months: 0 }, came: new Float64Array(0) };
  const failures = new FleetFailures({
    record: { failures: [], running: [running], now: known, beforeTest: known },
    wear: { now: undefined, beforeTest: undefined },
    firstMonth: 0,
    signals: [],
    horizon,
    futures,
    seed,
  });
  return sumOfPaths(failures.repairs(), horizon);
}
