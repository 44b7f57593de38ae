// How many simulated fleets lie in the bands forecast from their few failures.
import { type FleetPlan, fleetsInside } from "../forecast/simulated-fleets";

/** Shapes of early, chance and wear failures; few and many failures. */
export function benchForecastLives(fleets: number): void {
  console.log("shape  failures  share of fleets inside the central 90 % of the next half year");
  for (const shape of [0.8, 1.5, 3]) {
    for (const failures of [7, 10, 30]) {
      const plan: FleetPlan = { shape, failures, fleets, futures: 300, seed: 11 };
      console.log(
        `${shape.toFixed(1).padStart(5)}${String(failures).padStart(10)}  ${(100 * fleetsInside(plan)).toFixed(1)} %`,
      );
    }
  }
}
