import { expect, test } from "vitest";
import { robustRate, unitSums } from "@/lib/statistics/intervals/robust-rate";
import { studentQuantile } from "@/lib/statistics/student-t";
import { expectClose } from "@/tests/reference/read-reference";
import { randomSource } from "./random-source";

const units = [
  { events: 0, exposure: 3 },
  { events: 4, exposure: 2 },
  { events: 1, exposure: 5 },
  { events: 0, exposure: 1 },
  { events: 2, exposure: 4 },
];

function limited(rows: Parameters<typeof unitSums>[0], confidence: number) {
  const result = robustRate({ ...unitSums(rows), confidence });
  if (result.kind !== "interval") throw new Error(`expected an interval, got ${result.kind}`);
  return result;
}

// By definition, unit by unit: residuals −1.4, 3.0667, −1.3333, −0.46667, 0.13333 about the rate 7/15.
test("the variance is the sum of squared residuals of single units over the events squared", () => {
  const squares = (units.reduce((sum, unit) => sum + (unit.events - (7 / 15) * unit.exposure) ** 2, 0) * 5) / 4;
  const { point, low, high, dispersion } = limited(units, 0.95);
  expectClose(point, 7 / 15, 1e-14);
  expectClose(Math.log(high / point), (studentQuantile(0.975, 4) * Math.sqrt(squares)) / 7, 1e-12);
  expectClose(point / low, high / point, 1e-12);
  expectClose(dispersion, squares / 7, 1e-12);
});

// By hand: 100 units of equal time, 10 of which fail once: sum of squares 10 − 2 × 0.1 × 10 + 0.01 × 100 = 9, times 100/99.
test("units that fail at most once are a little less spread than a Poisson count", () => {
  const rows = Array.from({ length: 100 }, (_, i) => ({ events: i < 10 ? 1 : 0, exposure: 1 }));
  expectClose(limited(rows, 0.95).dispersion, 0.9 * (100 / 99), 1e-12);
});

test("one unit or no event has no such interval, and bad sums throw", () => {
  expect(robustRate({ ...unitSums([{ events: 3, exposure: 2 }]), confidence: 0.95 })).toEqual({
    kind: "too-few-units",
    units: 1,
  });
  expect(robustRate({ ...unitSums(units.map((unit) => ({ ...unit, events: 0 }))), confidence: 0.95 })).toEqual({
    kind: "no-events",
  });
  expect(() => robustRate({ ...unitSums(units), confidence: 95 })).toThrow(/confidence/);
  expect(() => robustRate({ ...unitSums(units), exposure: 0, confidence: 0.95 })).toThrow(/exposure/);
});

// By simulation: 200 units with gamma-distributed frailty (shape 1) and unequal times. The plain exact interval would
// cover about 80 % here (dispersion 1 + 0.4 × 3.3, normal approximation); nominal 95 % must be met within 2 points (1,500 runs have a standard error of 0.6).
test("bunched failures are covered as often as promised", () => {
  const random = randomSource(99);
  let covered = 0;
  for (let run = 0; run < 1500; run++) {
    const rows = Array.from({ length: 200 }, (_, i) => {
      const exposure = 0.5 + (i % 5);
      return { exposure, events: random.poisson(0.4 * random.gamma(1) * exposure) };
    });
    const { low, high } = limited(rows, 0.95);
    if (low <= 0.4 && 0.4 <= high) covered += 1;
  }
  expect(covered / 1500).toBeGreaterThan(0.93);
  expect(covered / 1500).toBeLessThan(0.97);
});
