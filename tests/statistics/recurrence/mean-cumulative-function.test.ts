import { describe, expect, test } from "vitest";
import { meanCumulativeFunction } from "@/lib/statistics/recurrence/mean-cumulative-function";
import type { RecurrenceVariance } from "@/lib/statistics/recurrence/recurrence-variance";
import type { UnitHistory } from "@/lib/statistics/recurrence/unit-history";
import { expectClose, expectPrinted, fromR } from "../../reference/read-reference";
import { brakingGrids, doorLocks, valveSeats } from "./reference-histories";

function curve(histories: readonly UnitHistory[], variance: RecurrenceVariance = "robust") {
  const drawn = meanCumulativeFunction(histories, { confidence: 0.95, variance, interval: "log" });
  if (drawn.kind !== "curve") throw new Error(`expected a curve, got ${drawn.kind}`);
  const at = (age: number) => {
    const step = drawn.steps.findLast((one) => one.age <= age);
    if (step?.limits.kind !== "limits") throw new Error(`no limits at ${age}`);
    return { mean: step.mean, error: step.limits.standardError };
  };
  return { ...drawn, at };
}

describe("open data sets", () => {
  // Nelson & Doganaksoy 1989; numbers recomputed in R, no printed table found; the number of engines was read.
  test("valve seats of 41 engines", () => {
    const seats = curve(valveSeats());
    expectPrinted("M01", {
      engines: seats.units,
      events: seats.steps.reduce((sum, step) => sum + step.events, 0),
      M98: seats.at(98).mean,
      M367: seats.at(367).mean,
      M573: seats.at(573).mean,
      M653: seats.at(653).mean,
      se98: seats.at(98).error,
      se367: seats.at(367).error,
      se653: seats.at(653).error,
      M653_survfit: seats.at(653).mean,
      se653_survfit: seats.at(653).error,
    });
  });

  // Doganaksoy & Nelson 1991; recomputed in R, the book shows a plot.
  test("braking grids, two batches", () => {
    const [one, two] = [curve(brakingGrids(1)), curve(brakingGrids(2))];
    expectPrinted("M03", {
      batch1_M_last: one.at(9999).mean,
      batch1_se_last: one.at(9999).error,
      batch1_t_last: one.steps.at(-1)?.age ?? 0,
      batch2_M_last: two.at(9999).mean,
      batch2_se_last: two.at(9999).error,
      batch2_t_last: two.steps.at(-1)?.age ?? 0,
    });
  });

  // Automotive warranty data; recomputed in R, no printed numbers found. Vehicles without repairs come as counts.
  test("door-lock transmitters: number and cost per vehicle from grouped end ages", () => {
    const number = curve(doorLocks("number"));
    expectPrinted("M04", {
      vehicles: number.units,
      repairs: number.steps.reduce((sum, step) => sum + step.events, 0),
      M_last: number.at(9999).mean,
      cost_M_last: curve(doorLocks("cost")).at(9999).mean,
    });
  });
});

// R 4.2.2, survival 3.5.3: survfit with id, whose error is the infinitesimal jackknife.
test.each([
  ["valve seats", valveSeats],
  ["braking grids 1", () => brakingGrids(1)],
  ["braking grids 2", () => brakingGrids(2)],
])("%s: mean and robust error agree with R at every event age", (caseName, histories) => {
  const drawn = curve(histories());
  const whole = (age: number) => Number.isInteger(age);
  for (const { age, value } of fromR(caseName, "mean")) if (whole(age)) expectClose(drawn.at(age).mean, value, 1e-9);
  for (const { age, value } of fromR(caseName, "error")) if (whole(age)) expectClose(drawn.at(age).error, value, 1e-9);
});

/** The Lawless–Nadeau definition, unit by unit and age by age: shares no code with the running form. */
function robustErrorByDefinition(histories: readonly UnitHistory[], until: number): number {
  const units = histories.flatMap((history) => Array.from({ length: history.count }, () => history));
  const ages = [...new Set(units.flatMap((unit) => unit.events.map((event) => event.age)))].filter(
    (age) => age <= until,
  );
  const watched = (unit: UnitHistory, age: number) => (unit.entry < age || unit.entry === 0) && age <= unit.exit;
  const sizeAt = (unit: UnitHistory, age: number) =>
    unit.events.filter((event) => event.age === age).reduce((sum, event) => sum + event.size, 0);
  const residual = (unit: UnitHistory) =>
    ages.reduce((sum, age) => {
      const risk = units.filter((other) => watched(other, age));
      const mean = risk.reduce((total, other) => total + sizeAt(other, age), 0) / risk.length;
      return watched(unit, age) ? sum + (sizeAt(unit, age) - mean) / risk.length : sum;
    }, 0);
  return Math.sqrt(units.reduce((sum, unit) => sum + residual(unit) ** 2, 0));
}

// By definition.
test("the running form of the robust variance is the definition, with late entry, ties, costs and shared histories", () => {
  const histories: UnitHistory[] = [
    {
      entry: 0,
      exit: 50,
      count: 3,
      events: [
        { age: 10, size: 2.5 },
        { age: 10, size: 1 },
        { age: 44, size: 7 },
      ],
    },
    { entry: 12, exit: 60, count: 2, events: [{ age: 20, size: 4 }] },
    { entry: 0, exit: 10, count: 5, events: [] },
    {
      entry: 20,
      exit: 44,
      count: 4,
      events: [
        { age: 44, size: 3 },
        { age: 21, size: 1 },
      ],
    },
    {
      entry: 30,
      exit: 80,
      count: 1,
      events: [
        { age: 70, size: 2 },
        { age: 80, size: 2 },
      ],
    },
    { entry: 0, exit: 0, count: 1, events: [{ age: 0, size: 1 }] },
  ];
  const drawn = curve(histories);
  expect(drawn.steps.map((step) => step.age)).toEqual([0, 10, 20, 21, 44, 70, 80]);
  for (const { age } of drawn.steps)
    expect(drawn.at(age).error).toBeCloseTo(robustErrorByDefinition(histories, age), 12);
});
