import { describe, expect, test } from "vitest";
import { largestJump } from "@/lib/figures/drawn-curve";
import { type DrawnSteps, type StepCurve, stepCurve } from "@/lib/figures/step-curve";
import { stepPaths } from "@/lib/figures/step-paths";
import { kaplanMeier } from "@/lib/statistics/survival/kaplan-meier";
import type { LifeRow } from "@/lib/statistics/survival/life-rows";
import { numbersAtAges } from "@/lib/statistics/survival/numbers-at-ages";

const month = 30.4375;
const lost = (months: number, count: number): LifeRow => ({ entry: 0, exit: months * month, event: false, count });
const failed = (months: number, count: number): LifeRow => ({ entry: 0, exit: months * month, event: true, count });
const years = [0, 12, 24, 36, 48].map((age) => age * month);

function curveOf(rows: readonly LifeRow[]): StepCurve {
  return stepCurve(kaplanMeier(rows, { confidence: 0.95, interval: "log-log" }), numbersAtAges(rows, years));
}

function steps(curve: StepCurve): DrawnSteps {
  if (curve.kind !== "steps") throw new Error(`expected steps, got ${curve.kind}`);
  return curve;
}

// By hand: 100 lives, 10 fail at 6 months (10 in 100 failed), 50 are lost at 12, 4 of the 40 left fail at 18:
// 1 − 0.9 × 36/40 = 0.19.
const plain = [failed(6, 10), lost(12, 50), failed(18, 4), lost(24, 36)];

test("steps go upwards to the shares worked out by hand", () => {
  const { points } = steps(curveOf(plain));
  expect(points.map(({ failed: share }) => Number(share.toPrecision(6)))).toEqual([0, 0.1, 0.19]);
  expect(points.map(({ months }) => Math.round(months))).toEqual([0, 6, 18]);
  expect(points.every(({ low, failed: share, high }) => low <= share && share <= high)).toBe(true);
});

test("still running, failed and lost sight of add up to the start count under every year", () => {
  const { watched } = steps(curveOf(plain));
  expect(watched.map(({ months }) => Math.round(months))).toEqual([0, 12, 24]);
  expect(watched.map(({ stillRunning, failed: gone, lost: unseen }) => [stillRunning, gone, unseen])).toEqual([
    [100, 0, 0],
    [40, 10, 50],
    [0, 14, 86],
  ]);
});

test("the line ends before one failure among those left would move it by more than 5 in 100", () => {
  // After 200 lost at 30 months 15 are left: one more failure would move the line by 1/15 of what survives.
  const thinning = [failed(6, 20), lost(30, 200), failed(40, 2), lost(44, 13)];
  const curve = steps(curveOf(thinning));
  expect(Math.round(curve.endMonths)).toBe(24);
  expect(curve.stopped).toContain("more than 5 in 100");
  expect(1 / 15).toBeGreaterThan(largestJump);
  const goes = steps(curveOf([failed(6, 20), lost(30, 200), failed(40, 2), lost(44, 130)]));
  expect(Math.round(goes.endMonths)).toBe(40);
});

test("there are named answers where nothing can be drawn", () => {
  expect(curveOf([lost(24, 50)])).toMatchObject({ kind: "nobody-failed" });
  expect(curveOf([])).toEqual({ kind: "nobody-watched" });
  expect(curveOf([failed(3, 1), lost(12, 8)])).toEqual({ kind: "too-few-to-draw" });
});

describe("axes", () => {
  test("hold the whole line and its range, from 0", () => {
    const curve = steps(curveOf(plain));
    expect(curve.monthTicks[0]).toBe(0);
    expect(curve.shareTicks[0]).toBe(0);
    expect(curve.maxMonths).toBeGreaterThanOrEqual(curve.endMonths - 1e-9);
    expect(curve.maxShare).toBeGreaterThanOrEqual(Math.max(...curve.points.map(({ high }) => high)));
  });
});

test("the outline runs level and then up, and the range comes back to where it began", () => {
  const { line, band } = stepPaths(steps(curveOf(plain)));
  expect(line).toMatch(/^M0 1000(H[\d.]+V[\d.]+)+H[\d.]+$/);
  expect(band).toMatch(/^M0 1000(H[\d.]+V[\d.]+)+H[\d.]+(V[\d.]+H[\d.]+)+Z$/);
  const levels = [...line.matchAll(/V([\d.]+)/g)].map((match) => Number(match[1]));
  expect(levels).toEqual([...levels].sort((a, b) => b - a));
});
