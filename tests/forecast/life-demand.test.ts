import { expect, test } from "vitest";
import { drawBandedLives } from "@/lib/forecast/draw-life";
import { componentRepairs, type FleetQuestion, lifeDemand, partsOfRepairs } from "@/lib/forecast/life-demand";
import { addedPaths, monthOfPaths, sumOfPaths } from "@/lib/forecast/paths";
import { countMean } from "@/lib/statistics/demand/count-distribution";
import { seededDraws } from "@/lib/statistics/demand/seeded-draws";

const certain = { of: Number.POSITIVE_INFINITY, counted: Number.POSITIVE_INFINITY };
const asked: FleetQuestion = {
  lives: Array.from({ length: 1200 }, () => (age: number) => 0.01 * age),
  inService: [{ age: 10, units: 500 }],
  horizon: 3,
  incoming: [],
  leaving: 0,
  ourShare: certain,
  usesPart: certain,
  quantity: 2,
  wear: [],
  seed: 4,
};
const mean = (question: FleetQuestion, month: number) => countMean(monthOfPaths(lifeDemand(question), month));

// By hand: a constant hazard of 0.01 a month fails 500 × (1 − e^−0.01) = 4.975 units, each taking 2 parts.
test("a fleet of constant hazard needs what the hazard says, less where units leave, more where units come", () => {
  expect(mean(asked, 0)).toBeGreaterThan(9.95 - 0.45);
  expect(mean(asked, 0)).toBeLessThan(9.95 + 0.45);
  expect(mean({ ...asked, leaving: 0.5 }, 2) / mean(asked, 2)).toBeLessThan(0.32);
  expect(mean({ ...asked, incoming: [500] }, 1) / mean(asked, 1)).toBeGreaterThan(1.8);
  expect(mean({ ...asked, usesPart: { of: 100, counted: 50 } }, 0) / mean(asked, 0)).toBeLessThan(0.56);
  expect(mean({ ...asked, wear: [3] }, 0) / mean(asked, 0)).toBeGreaterThan(2.7);
});

test("one seed gives one answer; rows of two parts add up in every future", () => {
  const [one, other] = [lifeDemand(asked), lifeDemand({ ...asked, seed: 5 })];
  expect(lifeDemand(asked)).toEqual(one);
  const whole = addedPaths([one, other]);
  expect(whole[7]?.[1]).toBe((one[7]?.[1] ?? 0) + (other[7]?.[1] ?? 0));
  expect(countMean(sumOfPaths(one, 3))).toBeCloseTo(
    [0, 1, 2].reduce((sum, m) => sum + mean(asked, m), 0),
    6,
  );
  expect(() => addedPaths([one, one.slice(1)])).toThrow(/each\[1\]/);
  expect(() => lifeDemand({ ...asked, leaving: 2 })).toThrow(/leaving/);
});

// By hand: half of 2 and half of 1 and 3 pieces; twice as many failures as expected double the need.
test("pieces per repair are drawn from past repairs, and a signal raises the need of the units that it is about", () => {
  expect(mean({ ...asked, quantity: [1, 0, 1] }, 0) / mean(asked, 0)).toBeCloseTo(1, 1);
  const signalled = {
    ...asked,
    signals: [{ observed: 200, expected: 100 }],
    inService: [{ age: 10, units: 500, signal: 0 }],
  };
  expect(Math.abs(mean(signalled, 0) / mean(asked, 0) - 2)).toBeLessThan(0.1);
  expect(() => lifeDemand({ ...signalled, signals: [] })).toThrow(/signal/);
  expect(() => lifeDemand({ ...asked, quantity: [0, 0] })).toThrow(/quantity/);
});

// Coherence: two parts of one component that every repair takes are needed alike in every future.
test("parts of one component follow the same repairs, so that they add up in every future", () => {
  const repairs = componentRepairs(asked);
  const [pump, clamps] = [1, 2].map((quantity) =>
    partsOfRepairs(repairs, { usesPart: certain, quantity, seed: quantity }),
  );
  expect(pump).toEqual(repairs);
  expect(clamps).toEqual(repairs.map((row) => row.map((count) => 2 * count)));
});

// By definition: the gamma of 9.5 over 100 has mean 0.095 a month; the band after it is never reached at age 10.
test("banded lives draw each band around failures over time lived", () => {
  const bands = [
    { from: 0, failures: 9, lived: 100 },
    { from: 20, failures: 0, lived: 50 },
  ];
  const lives = drawBandedLives(bands, 4000, seededDraws(1));
  const average = lives.reduce((sum, hazard) => sum + hazard(10), 0) / lives.length;
  expect(Math.abs(average - 0.95)).toBeLessThan(0.02);
});
