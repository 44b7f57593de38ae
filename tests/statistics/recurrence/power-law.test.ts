import { describe, expect, test } from "vitest";
import { fitPowerLaw } from "@/lib/statistics/recurrence/fit-power-law";
import type { RepairRecord } from "@/lib/statistics/recurrence/repair-record";
import { trendTests } from "@/lib/statistics/recurrence/trend-tests";
import { expectClose } from "../../reference/read-reference";
import { valveSeats } from "./reference-histories";

const options = { confidence: 0.95, minimumEvents: 1 } as const;
const byTime = (end: number, repairs: number[]): RepairRecord => ({ end, repairs, stoppedBy: "time" });

// By hand: for one system shape = N / Σ log(end / age); here two repairs at half and a quarter of the age watched:
// 2 / (log 2 + log 4) = 2 / (3 log 2), and scale = end / N^(1 / shape).
test("one system stopped by time, by hand", () => {
  const fit = fitPowerLaw([byTime(800, [400, 200])], options);
  if (fit.kind !== "fitted") throw new Error(fit.reason);
  expectClose(fit.shape, 2 / (3 * Math.LN2), 1e-12);
  expectClose(fit.scale, 800 / 2 ** (1 / fit.shape), 1e-12);
  // Chi-square on 4 degrees of freedom has its 2.5 % and 97.5 % points at 0.484419 and 11.143287.
  expectClose(fit.low, (fit.shape * 0.484418557087931) / 4, 1e-9);
  expectClose(fit.high, (fit.shape * 11.14328678187588) / 4, 1e-9);
});

// By hand: the last repair was not free to fall anywhere, so limits lose two degrees of freedom: 0.050636 and 7.377759.
test("one system stopped by its third failure, by hand", () => {
  const fit = fitPowerLaw([{ end: 800, repairs: [200, 800], stoppedBy: "failure" }], options);
  if (fit.kind !== "fitted") throw new Error(fit.reason);
  expectClose(fit.shape, 2 / Math.log(4), 1e-12);
  expectClose(fit.low, (fit.shape * 0.05063561596857975) / 4, 1e-9);
  expectClose(fit.high, (fit.shape * 7.377758908227872) / 4, 1e-9);
});

// By definition: the log-likelihood N log(b / s) + (b − 1) Σ log(t / s) − Σ (end / s)^b has no slope at the fit.
test("41 engines with their own end ages: the likelihood written out is flat at the fit", () => {
  const records = valveSeats().map(({ exit, events }) =>
    byTime(
      exit,
      events.map((event) => event.age),
    ),
  );
  const fit = fitPowerLaw(records, options);
  if (fit.kind !== "fitted") throw new Error(fit.reason);
  const value = (shape: number, scale: number) =>
    records.reduce(
      (sum, { end, repairs }) =>
        sum -
        (end / scale) ** shape +
        repairs.reduce((part, age) => part + Math.log(shape / scale) + (shape - 1) * Math.log(age / scale), 0),
      0,
    );
  const h = 1e-5;
  expect(
    Math.abs(value(fit.shape * (1 + h), fit.scale) - value(fit.shape * (1 - h), fit.scale)) / (2 * h),
  ).toBeLessThan(1e-4);
  expect(
    Math.abs(value(fit.shape, fit.scale * (1 + h)) - value(fit.shape, fit.scale * (1 - h))) / (2 * h),
  ).toBeLessThan(1e-4);
  expect(fit.repairs).toBe(48);
});

describe("trend tests", () => {
  // By hand: three repairs at 100, 200, 900 of 1000: excess −300, variance 3 · 1000² / 12 = 250000, z = −0.6; 2 Σ log(end / age) = 8.0347.
  test("one system, by hand", () => {
    const result = trendTests([byTime(1000, [100, 200, 900])]);
    if (result.kind !== "tested") throw new Error(result.kind);
    expectClose(result.laplace.z, -0.6, 1e-12);
    expectClose(result.laplace.probability, 0.548506, 1e-5);
    expectClose(result.powerLaw.chiSquare, 2 * Math.log((1000 / 100) * (1000 / 200) * (1000 / 900)), 1e-12);
    expect(result.powerLaw.degreesOfFreedom).toBe(6);
    // By hand for 6 degrees of freedom: upper tail exp(−y)(1 + y + y²/2) with y half the statistic.
    const y = result.powerLaw.chiSquare / 2;
    const upper = Math.exp(-y) * (1 + y + (y * y) / 2);
    expectClose(result.powerLaw.probability, 2 * Math.min(upper, 1 - upper), 1e-10);
  });

  test("late repairs turn the sign, and the last failure does not count when it ended the watch", () => {
    const wear = trendTests([{ end: 1000, repairs: [800, 900, 1000], stoppedBy: "failure" }]);
    if (wear.kind !== "tested") throw new Error(wear.kind);
    // By hand: two free repairs, excess 700, variance 2 · 1000² / 12.
    expectClose(wear.laplace.z, 700 / Math.sqrt(2e6 / 12), 1e-12);
    expect(wear.powerLaw.degreesOfFreedom).toBe(4);
  });
});

test("refusals and mistakes are named", () => {
  expect(fitPowerLaw([byTime(10, [])], options)).toEqual({ kind: "refused", reason: "no-events", repairs: 0 });
  expect(fitPowerLaw([byTime(10, [3])], { ...options, minimumEvents: 2 })).toMatchObject({ reason: "too-few-events" });
  expect(fitPowerLaw([byTime(10, [10])], options)).toMatchObject({ reason: "flat-likelihood" });
  expect(fitPowerLaw([{ end: 10, repairs: [10], stoppedBy: "failure" }], options)).toMatchObject({
    reason: "flat-likelihood",
  });
  expect(trendTests([byTime(10, [])])).toEqual({ kind: "too-few" });
  expect(() => trendTests([byTime(10, [11])])).toThrow(
    "records[0].repairs[0] must lie above 0 and not above 10; it is 11",
  );
  expect(() => trendTests([{ end: 10, repairs: [9], stoppedBy: "failure" }])).toThrow(
    "its last repair must be at its end 10",
  );
});
