import { describe, expect, test } from "vitest";
import { type DrawnCurve, kaplanMeier } from "@/lib/statistics/survival/kaplan-meier";
import type { LifeRow } from "@/lib/statistics/survival/life-rows";
import type { CurveSource } from "@/lib/statistics/survival/risk-table";
import type { SurvivalInterval } from "@/lib/statistics/survival/survival-limits";
import { survivalQuantile } from "@/lib/statistics/survival/survival-quantile";
import { expectClose, expectPrinted, fromR } from "../../reference/read-reference";
import { generatorFans, leukemia, macs, rossi } from "./reference-lives";

function drawn(source: CurveSource, interval: SurvivalInterval = "log-log"): DrawnCurve {
  const curve = kaplanMeier(source, { confidence: 0.95, interval });
  if (curve.kind !== "curve") throw new Error(`expected a curve, got ${curve.kind}`);
  return curve;
}

function at(curve: DrawnCurve, age: number) {
  const step = curve.steps.findLast((one) => one.age <= age);
  if (step?.limits.kind !== "limits") throw new Error(`no limits at ${age}`);
  return { survival: step.survival, atRisk: step.atRisk, ...step.limits };
}

describe("printed examples", () => {
  // Klein & Moeschberger, Table 4.1 (Freireich et al. 1963): survival and errors remembered, limits recomputed.
  test("6-MP arm of the remission trial, all three interval scales", () => {
    const curves = {
      loglog: drawn(leukemia("6-MP")),
      plain: drawn(leukemia("6-MP"), "plain"),
      log: drawn(leukemia("6-MP"), "log"),
    };
    const results: Record<string, number> = {};
    for (const week of [6, 7, 10, 13, 16, 22, 23]) {
      const { survival, standardError, low, high } = at(curves.loglog, week);
      results[`S${week}`] = survival;
      results[`se${week}`] = standardError;
      results[`loglog_lo${week}`] = low;
      results[`loglog_hi${week}`] = high;
      results[`plain_lo${week}`] = at(curves.plain, week).low;
      results[`log_lo${week}`] = at(curves.log, week).low;
    }
    const median = survivalQuantile(curves.loglog, 0.5);
    results.median = median.kind === "reached" ? median.age : Number.NaN;
    expectPrinted("K01", results);
    expect(median).toEqual({ kind: "reached", age: 23, low: 13, high: "not-reached" });
  });

  // Cox & Oakes, Table 1.1: both values read. At 10 weeks 8 of 21 remain, so the error is √(8/21 · 13/21 / 21).
  test("control arm of the remission trial at 10 weeks", () => {
    const { survival, standardError } = at(drawn(leukemia("control")), 10);
    expectPrinted("K02", { S10: survival, se10: standardError });
    expect(standardError).toBeCloseTo(Math.sqrt(((8 / 21) * (13 / 21)) / 21), 14);
  });

  // Cole & Hudgens 2010: check values read. The risk set grows where units enter late.
  test("late entrants of the cohort study", () => {
    const curve = drawn(macs());
    const median = survivalQuantile(curve, 0.5);
    expectPrinted("K06", {
      n_event_times: curve.steps.length,
      "risk_0.269": at(curve, 0.269).atRisk,
      "risk_0.791": at(curve, 0.791).atRisk,
      "risk_4.688": at(curve, 4.688).atRisk,
      "S_0.791": at(curve, 0.791).survival,
      median: median.kind === "reached" ? median.age : Number.NaN,
    });
  });
});

// R 4.2.2, survival 3.5.3, survfit: tests/reference/survival.R.
describe.each([
  ["leukemia 6-MP", () => leukemia("6-MP")],
  ["macs", macs],
  ["rossi late entry", rossi],
  ["genfan", generatorFans],
])("%s agrees with R survfit", (caseName, rows) => {
  test("survival, standard error and numbers at risk", () => {
    const curve = drawn(rows());
    const expected = fromR(caseName, "survival");
    expect(curve.steps.map((step) => step.age)).toEqual(expected.map((step) => step.age));
    for (const { age, value } of expected) expectClose(at(curve, age).survival, value, 1e-12);
    for (const { age, value } of fromR(caseName, "standard_error"))
      expectClose(at(curve, age).standardError, value, 1e-11);
    for (const { age, value } of fromR(caseName, "at_risk")) expect(at(curve, age).atRisk).toBe(value);
  });

  test.each(["plain", "log", "log-log"] as const)("%s limits", (interval) => {
    const curve = drawn(rows(), interval);
    for (const { age, value } of fromR(caseName, `lower_${interval}`)) expectClose(at(curve, age).low, value, 1e-10);
    for (const { age, value } of fromR(caseName, `upper_${interval}`)) expectClose(at(curve, age).high, value, 1e-10);
  });
});

describe("hard cases", () => {
  const life = (entry: number, exit: number, event: boolean, count = 1): LifeRow => ({ entry, exit, event, count });

  test("nobody at all, and nobody failed, are cases of their own", () => {
    expect(kaplanMeier([], { confidence: 0.95, interval: "log" })).toEqual({ kind: "no-exposure" });
    expect(kaplanMeier([life(0, 0, false)], { confidence: 0.95, interval: "log" })).toEqual({ kind: "no-exposure" });
    expect(kaplanMeier([life(0, 9, false, 40)], { confidence: 0.95, interval: "log" })).toEqual({
      kind: "no-events",
      lastAge: 9,
    });
  });

  test("when everybody has failed survival is 0 and has no limits", () => {
    const last = drawn([life(0, 2, true), life(0, 5, true, 3)]).steps.at(-1);
    expect(last).toEqual({
      age: 5,
      atRisk: 3,
      events: 3,
      survival: 0,
      limits: { kind: "no-limits", reason: "nobody-left" },
    });
  });

  test("a late-entry risk set of one that fails collapses the curve, and the curve says so", () => {
    const curve = drawn([life(0, 1, true), life(3, 8, true), life(3, 9, false)]);
    expect(curve.collapsed).toBe(true);
    expect(curve.steps.map((step) => step.survival)).toEqual([1 - 1, 0]);
    expect(drawn([life(0, 1, true), life(0, 8, true)]).collapsed).toBe(false);
  });

  test("a failure at age 0 counts among all who were watched from the start", () => {
    expect(drawn([life(0, 0, true), life(0, 4, false, 3)]).steps[0]).toMatchObject({
      age: 0,
      atRisk: 4,
      survival: 0.75,
    });
  });

  test("a million lives at one age are one step", () => {
    const step = drawn([life(0, 365, true, 400_000), life(0, 365, false, 600_000)]).steps[0];
    expect(step).toMatchObject({ age: 365, atRisk: 1_000_000, events: 400_000, survival: 0.6 });
  });

  test("a caller's mistake names the row and the field", () => {
    const options = { confidence: 0.95, interval: "log" } as const;
    expect(() => kaplanMeier([life(5, 3, true)], options)).toThrow(
      "rows[0].exit must be a finite age, not below its entry 5; it is 3",
    );
    expect(() => kaplanMeier([life(0, 3, true), life(4, 4, true)], options)).toThrow(
      "rows[1] fails at age 4, the age at which it entered",
    );
    expect(() => kaplanMeier([life(0, 3, true, 1.5)], options)).toThrow("rows[0].count must be a whole number");
    expect(() => kaplanMeier([life(0, 3, true)], { ...options, confidence: 95 })).toThrow(
      "confidence must lie strictly between 0 and 1",
    );
  });
});
