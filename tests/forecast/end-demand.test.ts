import { expect, test } from "vitest";
import { type EndDemandQuestion, endDemand } from "@/lib/forecast/end-demand";
import { PiecesTaken } from "@/lib/forecast/fleet/pieces-taken";
import { countMean, countQuantile } from "@/lib/statistics/demand/count-distribution";
import { endsInside } from "./simulated-ends";

const constant = (perMonth: number) => ({
  failed: new Float64Array(200).fill(100),
  lived: new Float64Array(200).fill(100 / perMonth),
});

/** Constant hazards, known from 20,000 ends each: components fail a hundredth a month, machines leave a fiftieth. */
const steady: EndDemandQuestion = {
  fleet: {
    lives: constant(0.01),
    stays: constant(0.02),
    cohorts: [{ machineAge: 27, running: Float64Array.from({ length: 25 }, (_, age) => (age === 24 ? 500 : 0)) }],
  },
  use: { failures: 20_000, took: 10_000, usesPart: { of: 20_000, counted: 10_000 }, perFailure: 1 },
  pieces: new PiecesTaken([0, 1]),
  futures: 200,
  seed: 7,
};

// By hand: what is renewed fails like what it replaced, so that 500 machines of 50 months each on average fail 0.01 a
// month: 250 failures, half of which take two pieces. Machines stay 0.02 e^(−0.02 t): half a one is left after ln(1000)/0.02.
test("a fleet of constant hazards takes what its machine-months give by hand", () => {
  const { demand, medianMonths = 0 } = endDemand(steady);
  // The standard error of the mean of 200 futures is about 2 √125 / √200.
  expect(Math.abs(countMean(demand) / 250 - 1)).toBeLessThan(0.025);
  expect(countQuantile(demand, 0.95) - countQuantile(demand, 0.05)).toBeGreaterThan(50);
  expect(Math.abs(medianMonths - Math.log(1000) / 0.02)).toBeLessThan(25);
});

// Coverage by simulation with separate code for the truth; 0.9 within the noise of 40 fleets (its error is 0.05).
test("nine in ten of simulated fleets, followed to their end, lie in the range of the last buy", () => {
  const inside = endsInside({
    machines: 300,
    life: { shape: 1.5, scale: 150 },
    stay: { shape: 3, scale: 170 },
    share: 0.7,
    fleets: 40,
    futures: 50,
    seed: 3,
  });
  expect(inside).toBeGreaterThan(0.78);
  expect(inside).toBeLessThan(0.99);
});

test("an impossible share is the caller's mistake", () => {
  expect(() => endDemand({ ...steady, use: { ...steady.use, usesPart: { of: 1, counted: 2 } } })).toThrow(RangeError);
});
