import { drawLives } from "@/lib/forecast/draw-life";
import { lifeDemand } from "@/lib/forecast/life-demand";
import { sumOfPaths } from "@/lib/forecast/paths";
import { shareInsideCentral } from "@/lib/statistics/demand/count-band";
import type { CountDistribution } from "@/lib/statistics/demand/count-distribution";
import { seededDraws } from "@/lib/statistics/demand/seeded-draws";
import { fitWeibull } from "@/lib/statistics/life/fit-weibull";
import type { LifeRow } from "@/lib/statistics/survival/life-rows";
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
const certain = { of: Number.POSITIVE_INFINITY, counted: Number.POSITIVE_INFINITY };

/** Share of simulated fleets whose failures of the next half year lie in the central 90 % of what was forecast. */
export function fleetsInside({ shape, failures, fleets, futures, seed }: FleetPlan): number {
  const random = randomSource(seed);
  // By integrating the cumulative hazard over ages spread evenly from 0 to the oldest.
  const scale = ((units * oldest ** shape) / (shape + 1) / failures) ** (1 / shape);
  const life = () => scale * (-Math.log(random.uniform())) ** (1 / shape);
  let [inside, tried] = [0, 0];
  for (let fleet = 0; fleet < fleets; fleet++) {
    const { rows, inService, actual } = oneFleet(random, life);
    const forecast = forecastOf(rows, inService, { futures, seed: 1000 * seed + fleet });
    if (forecast === undefined) continue;
    tried += 1;
    inside += shareInsideCentral(forecast, 0.9, actual);
  }
  return inside / tried;
}

function oneFleet(random: RandomSource, life: () => number) {
  const rows: LifeRow[] = [];
  const inService = new Map<number, number>();
  let actual = 0;
  for (let unit = 0; unit < units; unit++) {
    // Whole months of age at the start, so that lives share them and the fit is quick.
    let age = 1 + Math.floor(oldest * random.uniform());
    let spell = life();
    for (; spell < age; age -= spell, spell = life()) rows.push({ entry: 0, exit: spell, event: true, count: 1 });
    rows.push({ entry: 0, exit: age, event: false, count: 1 });
    inService.set(Math.round(age * 2) / 2, (inService.get(Math.round(age * 2) / 2) ?? 0) + 1);
    for (let at = spell - age; at < horizon; at += life()) actual += 1;
  }
  return { rows, inService: [...inService].map(([age, count]) => ({ age, units: count })), actual };
}

function forecastOf(
  rows: readonly LifeRow[],
  inService: readonly { readonly age: number; readonly units: number }[],
  { futures, seed }: { readonly futures: number; readonly seed: number },
): CountDistribution | undefined {
  const fit = fitWeibull(rows, { confidence: 0.9, minimumEvents: 5, failedAtZero: { within: 0.02 } });
  if (fit.kind === "refused") return undefined;
  const paths = lifeDemand({
    lives: drawLives(fit, futures, seededDraws(seed)),
    inService,
    horizon,
    incoming: [],
    leaving: 0,
    ourShare: certain,
    usesPart: certain,
    quantity: 1,
    wear: [],
    seed,
  });
  return sumOfPaths(paths, horizon);
}
