import { describe, expect, test } from "vitest";
import { meanCumulativeFunction } from "@/lib/statistics/recurrence/mean-cumulative-function";
import type { UnitHistory } from "@/lib/statistics/recurrence/unit-history";
import { expectClose } from "../../reference/read-reference";
import { brakingGrids, doorLocks, valveSeats } from "./reference-histories";

function steps(histories: readonly UnitHistory[], variance: "robust" | "nelson" | "poisson") {
  const curve = meanCumulativeFunction(histories, { confidence: 0.95, variance, interval: "plain" });
  if (curve.kind !== "curve") throw new Error(curve.kind);
  return curve.steps;
}

const sizeAt = (unit: UnitHistory, age: number) =>
  unit.events.filter((event) => event.age === age).reduce((sum, event) => sum + event.size, 0);

/**
 * Nelson's variance as he writes it: every pair of ages, the sample covariance over the units at risk at the later
 * one, over the number at risk at the earlier one. Shares no code with the running form.
 */
function nelsonByDefinition(units: readonly UnitHistory[], until: number): number {
  const ages = [...new Set(units.flatMap((unit) => unit.events.map((event) => event.age)))].filter(
    (age) => age <= until,
  );
  const pair = (early: number, late: number) => {
    const risk = units.filter((unit) => late <= unit.exit);
    const mean = risk.reduce((sum, unit) => sum + sizeAt(unit, late), 0) / risk.length;
    const products = risk.reduce((sum, unit) => sum + (sizeAt(unit, late) - mean) * sizeAt(unit, early), 0);
    return products / (risk.length - 1) / units.filter((unit) => early <= unit.exit).length;
  };
  return ages.reduce((sum, a) => sum + ages.reduce((inner, b) => inner + pair(Math.min(a, b), Math.max(a, b)), 0), 0);
}

describe("the three variances", () => {
  // By definition.
  test.each([
    ["valve seats", valveSeats],
    ["braking grids", () => brakingGrids(1)],
  ])("%s: Nelson's running form is the sum over all pairs of ages", (_, histories) => {
    for (const { age, limits } of steps(histories(), "nelson")) {
      const expected = nelsonByDefinition(histories(), age);
      if (limits.kind === "limits") expectClose(limits.standardError ** 2, expected, 1e-9);
      else expect(expected).toBeLessThan(0);
    }
  });

  // By hand: with everybody watched to the end, Nelson's is the sample variance of the totals over n, the robust one has divisor n.
  test("complete histories: both are the variance of the units' totals", () => {
    const totals = [0, 1, 1, 4, 2];
    const histories = totals.map((total, unit) => ({
      entry: 0,
      exit: 100,
      count: 1,
      events: Array.from({ length: total }, (_, i) => ({ age: 10 * (i + 1) + unit, size: 1 })),
    }));
    const mean = totals.reduce((sum, total) => sum + total, 0) / 5;
    const squares = totals.reduce((sum, total) => sum + (total - mean) ** 2, 0);
    const last = (variance: "robust" | "nelson" | "poisson") => {
      const limits = steps(histories, variance).at(-1)?.limits;
      return limits?.kind === "limits" ? limits.standardError ** 2 : Number.NaN;
    };
    expect(last("nelson")).toBeCloseTo(squares / 4 / 5, 12);
    expect(last("robust")).toBeCloseTo(squares / 5 / 5, 12);
    expect(last("poisson")).toBeCloseTo(8 / 25, 12);
  });

  // By definition: Σ dN / Y². The thirteen repairs of 13,201 vehicles hardly overlap, so robust and Poisson nearly agree.
  test("the Poisson variance adds each event over the square of the number at risk", () => {
    const drawn = steps(doorLocks("number"), "poisson");
    let variance = 0;
    for (const { events, atRisk, limits } of drawn) {
      variance += events / atRisk ** 2;
      if (limits.kind !== "limits") throw new Error("no limits");
      expectClose(limits.standardError ** 2, variance, 1e-12);
    }
    const robust = steps(doorLocks("number"), "robust").at(-1)?.limits;
    if (robust?.kind !== "limits") throw new Error("no limits");
    expectClose(robust.standardError ** 2, variance, 0.002);
  });
});

describe("hard cases", () => {
  const options = { confidence: 0.95, variance: "robust", interval: "log" } as const;

  test("no events and no exposure are cases of their own", () => {
    expect(meanCumulativeFunction([], options)).toEqual({ kind: "no-exposure" });
    const quiet = [{ entry: 0, exit: 30, count: 500, events: [] }];
    expect(meanCumulativeFunction(quiet, options)).toEqual({ kind: "no-events", lastAge: 30, units: 500 });
  });

  test("one unit left: Nelson has nothing to judge its spread by, and says so", () => {
    const histories: UnitHistory[] = [
      { entry: 0, exit: 5, count: 1, events: [{ age: 3, size: 1 }] },
      { entry: 0, exit: 9, count: 1, events: [{ age: 8, size: 1 }] },
    ];
    expect(steps(histories, "nelson").at(-1)?.limits).toEqual({ kind: "no-limits", reason: "nobody-left" });
  });

  test("units that are all alike have no robust error, not a negative one", () => {
    const alike = Array.from({ length: 7 }, () => ({
      entry: 0,
      exit: 50,
      count: 3,
      events: [
        { age: 10, size: 1 },
        { age: 30, size: 2 },
      ],
    }));
    for (const { limits } of steps(alike, "robust"))
      expect(limits).toMatchObject({ kind: "limits", standardError: expect.closeTo(0, 7) });
  });

  test("log limits lie a factor exp(z error / mean) to either side", () => {
    const curve = meanCumulativeFunction(valveSeats(), options);
    const step = curve.kind === "curve" ? curve.steps.at(-1) : undefined;
    if (step?.limits.kind !== "limits") throw new Error("no limits");
    const factor = Math.exp((1.959963984540054 * step.limits.standardError) / step.mean);
    expectClose(step.limits.high, step.mean * factor, 1e-12);
    expectClose(step.limits.low, step.mean / factor, 1e-12);
  });

  test("a caller's mistake names its place", () => {
    const unit = { entry: 10, exit: 20, count: 1, events: [{ age: 10, size: 1 }] };
    expect(() => meanCumulativeFunction([unit], options)).toThrow(
      "histories[0].events[0].age must lie while the unit is watched, 10 to 20; it is 10",
    );
    expect(() => meanCumulativeFunction([{ ...unit, exit: 5 }], options)).toThrow(
      "histories[0].exit must be a finite age, not below its entry 10; it is 5",
    );
    const early = { entry: 0, exit: 20, count: 1, events: [{ age: 5, size: 1 }] };
    const late = { ...unit, events: [{ age: 15, size: 1 }] };
    expect(() => steps([early, late], "nelson")).toThrow("needs every unit watched from before the first event");
  });
});
