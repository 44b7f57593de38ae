import { expect, test } from "vitest";
import { endDemand } from "@/lib/forecast/end-demand";
import type { FleetFacts } from "@/lib/forecast/fleet-facts";
import { countMean, countQuantile } from "@/lib/statistics/demand/count-distribution";
import { fitExponential } from "@/lib/statistics/life/fit-exponential";

const daysPerMonth = 30.4375;

/** A constant hazard of a hundredth a month, known from 4,000 failures; 500 units, of which a fiftieth leaves a month. */
function steadyFleet(): Extract<FleetFacts, { kind: "fleet" }> {
  const fit = fitExponential(
    {
      ages: Float64Array.of(0, 100 * daysPerMonth),
      entered: Float64Array.of(4000, 0),
      events: Float64Array.of(0, 4000),
      lost: Float64Array.of(0, 0),
    },
    { confidence: 0.9, minimumEvents: 5, failedAtZero: { within: 0.5 } },
  );
  if (fit.kind === "refused") throw new Error("the fit was refused");
  return { kind: "fleet", fit, failures: 4000, inService: [{ age: 24, units: 500 }], leaving: 0.02 };
}

// By hand: renewal leaves the number of units alone, so that they fail at 0.01 a month for as long as they are there.
// In a step of three months a unit fails with p = 1 - exp(-0.03), what replaces it again within its second half with
// 1 - exp(-0.015), and of those that did not fail 1 - 0.98^3 leave: units at the beginnings of all steps sum to
// 500 / ((1 - p) (1 - 0.98^3)). Half of the repairs take two pieces each.
test("a fleet of constant hazard takes what its unit-months give by hand", () => {
  const p = -Math.expm1(-0.03);
  const steps = 500 / ((1 - p) * (1 - 0.98 ** 3));
  const each = p * (1 - Math.expm1(-0.015));
  const byHand = 2 * 0.5 * steps * each;
  const { demand, medianMonths } = endDemand({
    facts: steadyFleet(),
    usesPart: { of: 20_000, counted: 10_000 },
    pieces: 2,
    futures: 200,
    seed: 7,
  });
  // The standard error of the mean of 200 futures is about 25 / √200.
  expect(Math.abs(countMean(demand) / byHand - 1)).toBeLessThan(0.03);
  expect(countQuantile(demand, 0.95) - countQuantile(demand, 0.05)).toBeGreaterThan(30);
  // 500 units leaving a fiftieth a month are gone after ln(500)/0.02, about 310 months, give or take.
  expect(medianMonths).toBeGreaterThan(200);
  expect(medianMonths).toBeLessThan(480);
});

test("an impossible share is the caller's mistake", () => {
  expect(() =>
    endDemand({ facts: steadyFleet(), usesPart: { of: 1, counted: 2 }, pieces: 1, futures: 10, seed: 1 }),
  ).toThrow(RangeError);
});
