import { expect, test } from "vitest";
import { drawLives } from "@/lib/forecast/draw-life";
import { seededDraws } from "@/lib/statistics/demand/seeded-draws";
import { fitExponential } from "@/lib/statistics/life/fit-exponential";
import { fleetsInside } from "./simulated-fleets";

// By definition: of a constant hazard, failures over time lived, Jeffreys' posterior is a gamma of failures + 1/2.
test("lives of a constant hazard are drawn as the gamma of half a failure more over the time lived", () => {
  const fit = fitExponential(
    [
      { entry: 0, exit: 50, event: true, count: 4 },
      { entry: 0, exit: 100, event: false, count: 3 },
    ],
    { confidence: 0.9, minimumEvents: 1 },
  );
  if (fit.kind === "refused") throw new Error(fit.reason);
  const rates = drawLives(fit, 6000, seededDraws(2)).map((hazard) => hazard(1));
  const mean = rates.reduce((sum, rate) => sum + rate, 0) / rates.length;
  const variance = rates.reduce((sum, rate) => sum + (rate - mean) ** 2, 0) / rates.length;
  expect(Math.abs(mean / (4.5 / 500) - 1)).toBeLessThan(0.02);
  expect(Math.abs(variance / (4.5 / 500 ** 2) - 1)).toBeLessThan(0.08);
});

// Coverage by simulation with separate code for the truth; 0.9 within the noise of 60 fleets (its error is 0.035).
test("nine in ten of simulated fleets with ten failures lie in the 90 % band of their next half year", () => {
  const inside = fleetsInside({ shape: 1.5, failures: 10, fleets: 60, futures: 150, seed: 6 });
  expect(inside).toBeGreaterThan(0.82);
  expect(inside).toBeLessThan(0.98);
});
