import { expect, test } from "vitest";
import { fleetsInside } from "./simulated-fleets";

// Coverage by simulation with separate code for the truth; 0.9 within the noise of 80 fleets (its error is 0.03).
// More of them, and other shapes, by `npm run bench -- forecast-lives`.
test("nine in ten of simulated fleets with ten failures lie in the 90 % band of their next half year", () => {
  const inside = fleetsInside({ shape: 1.5, failures: 10, fleets: 80, futures: 200, seed: 6 });
  expect(inside).toBeGreaterThan(0.82);
  expect(inside).toBeLessThan(0.98);
});
