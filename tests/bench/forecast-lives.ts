// How many simulated fleets lie in the bands forecast from their few failures.
import { endsInside } from "../forecast/simulated-ends";
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

/** Fleets followed until their last machine has left: the range of the last buy. */
export function benchForecastEnds(fleets: number): void {
  console.log(
    "shape  scale  share of fleets inside the central 90 % of the need to their end; machines stay by shape 3, scale 170",
  );
  for (const [shape, scale] of [
    [0.8, 300],
    [1.5, 150],
    [1.5, 400],
    [3, 120],
  ] as const) {
    const inside = endsInside({
      machines: 300,
      life: { shape, scale },
      stay: { shape: 3, scale: 170 },
      share: 0.7,
      fleets,
      futures: 200,
      seed: 11,
    });
    console.log(`${shape.toFixed(1).padStart(5)}${String(scale).padStart(7)}  ${(100 * inside).toFixed(1)} %`);
  }
}
