import { describe, expect, test } from "vitest";
import { curvePair } from "@/lib/figures/curve-pair";
import { axesFor, readableCounts } from "@/lib/figures/drawn-curve";
import { type DrawnMeans, meanSteps } from "@/lib/figures/mean-steps";
import { smoothPath, stepPaths } from "@/lib/figures/step-paths";
import { meanCumulativeFunction } from "@/lib/statistics/recurrence/mean-cumulative-function";
import type { UnitHistory } from "@/lib/statistics/recurrence/unit-history";

const month = 30.4375;
const unit = (count: number, months: readonly number[], exit = 60): UnitHistory => ({
  entry: 0,
  exit: exit * month,
  count,
  events: months.map((age) => ({ age: age * month, size: 1 })),
});

function drawn(histories: readonly UnitHistory[], fromAge = 0): DrawnMeans {
  const found = meanSteps(
    meanCumulativeFunction(histories, { confidence: 0.95, variance: "robust", interval: "log" }),
    fromAge,
  );
  if (found.kind !== "steps") throw new Error(found.kind);
  return found;
}

describe("failures per unit", () => {
  // By hand: 100 units; 20 fail at 6 months and half of those again at 18: 0.2, then 0.3 a unit.
  const figure = drawn([unit(80, []), unit(10, [6]), unit(10, [6, 18])]);

  test("count a unit's second failure", () => {
    expect(figure.points.map(({ failed }) => Number(failed.toPrecision(6)))).toEqual([0, 0.2, 0.3]);
    expect(figure.byYear.map(({ years, failures }) => [years, failures])).toEqual([[1, 20]]);
  });

  test("may rise above one a unit, and the axis goes with them", () => {
    const often = drawn([unit(30, [6, 12, 18, 24, 30, 36])]);
    expect(often.points.at(-1)?.failed).toBeCloseTo(6, 9);
    expect(often.maxShare).toBeGreaterThanOrEqual(6);
    expect(often.shareTicks.length).toBeLessThanOrEqual(7);
  });

  test("end where one more failure would move them by more than 5 in 100", () => {
    const thinning = drawn([unit(10, [6], 20), unit(300, [], 20), unit(19, [40])]);
    expect(thinning.points).toHaveLength(2);
    expect(thinning.stopped).toContain("more than 5 in 100");
  });

  test("begin at the age at which watching began", () => {
    const late = drawn([{ ...unit(50, [36]), entry: 24 * month }], 24 * month);
    expect(late.points[0]?.months).toBeCloseTo(24, 9);
    expect(stepPaths(late).line).toMatch(/^M[1-9]/);
  });

  test("name what cannot be drawn", () => {
    const options = { confidence: 0.95, variance: "robust", interval: "log" } as const;
    expect(meanSteps(meanCumulativeFunction([unit(9, [])], options), 0)).toMatchObject({ kind: "nobody-failed" });
    expect(meanSteps(meanCumulativeFunction([], options), 0)).toEqual({ kind: "nobody-watched" });
    expect(meanSteps(meanCumulativeFunction([unit(9, [3])], options), 0)).toEqual({ kind: "too-few-to-draw" });
  });
});

test("two lines stand on the same axes, and each keeps its own points", () => {
  const short = drawn([unit(80, []), unit(20, [6])]);
  const long = drawn([unit(10, []), unit(50, [6, 50])]);
  const { axes, lines } = curvePair({ name: "one", curve: short }, { name: "two", curve: long });
  for (const { curve } of lines) {
    expect(curve.maxMonths).toBe(axes.maxMonths);
    expect(curve.maxShare).toBe(axes.maxShare);
    expect(Math.max(...curve.points.map(({ high }) => high))).toBeLessThanOrEqual(axes.maxShare);
    expect(curve.endMonths).toBeLessThanOrEqual(axes.maxMonths);
  }
  expect(lines.map(({ curve }) => curve.points)).toEqual([short.points, long.points]);
});

test("counts under the axis keep a distance that a phone can show", () => {
  const yearly = Array.from({ length: 15 }, (_, year) => ({ months: 12 * year, count: 1000 + year }));
  const shown = (end: number) =>
    readableCounts({ name: "units", at: yearly }, axesFor("", end, 1)).map(({ months }) => months);
  expect(shown(60)).toEqual(yearly.map(({ months }) => months));
  expect(shown(168)).toEqual([0, 36, 72, 108, 144]);
});

test("a smooth line goes through its points on the square of 1000", () => {
  const points = [0, 30, 60].map((months) => ({ months, failed: months / 120 }));
  expect(smoothPath(points, { maxMonths: 60, maxShare: 1 })).toBe("M0 1000L500 750L1000 500");
});
