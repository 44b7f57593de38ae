import { describe, expect, test } from "vitest";
import { fitExponential } from "@/lib/statistics/life/fit-exponential";
import { fitLognormal } from "@/lib/statistics/life/fit-lognormal";
import { fitWeibull } from "@/lib/statistics/life/fit-weibull";
import type { FittedLife } from "@/lib/statistics/life/fitted-life";
import { kaplanMeier } from "@/lib/statistics/survival/kaplan-meier";
import type { LifeRow } from "@/lib/statistics/survival/life-rows";
import { nelsonAalen } from "@/lib/statistics/survival/nelson-aalen";
import { expectClose } from "../reference/read-reference";
import { bearingCages, generatorFans, macs, rossi } from "./survival/reference-lives";

// By definition: a thousand times the lives leave every estimate where it is, and divide every standard error by √1000.

const times = 1000;
const many = (rows: readonly LifeRow[]) => rows.map((row) => ({ ...row, count: row.count * times }));

describe.each([
  ["bearing cages", bearingCages()],
  ["generator fans", generatorFans()],
  ["late-entry cohort", macs()],
  ["late-entry releases", rossi()],
] as const)("%s", (_, rows) => {
  test("curve and cumulative hazard", () => {
    const [one, all] = [rows, many(rows)].map((lives) => kaplanMeier(lives, { confidence: 0.95, interval: "log-log" }));
    const [low, high] = [rows, many(rows)].map((lives) => nelsonAalen(lives, { confidence: 0.95, interval: "log" }));
    if (one?.kind !== "curve" || all?.kind !== "curve" || low?.kind !== "curve" || high?.kind !== "curve")
      throw new Error("no curve");
    expect(all.steps.length).toBe(one.steps.length);
    one.steps.forEach((step, i) => {
      const other = all.steps[i];
      expectClose(other?.survival ?? Number.NaN, step.survival, 1e-12);
      if (step.limits.kind !== "limits" || other?.limits.kind !== "limits") return;
      expectClose(other.limits.standardError * Math.sqrt(times), step.limits.standardError, 1e-11);
    });
    low.steps.forEach((step, i) => {
      expectClose(high.steps[i]?.cumulativeHazard ?? Number.NaN, step.cumulativeHazard, 1e-12);
    });
  });

  test.each([
    ["weibull", fitWeibull],
    ["lognormal", fitLognormal],
    ["exponential", fitExponential],
  ] as const)("%s", (_family, estimate) => {
    const [one, all] = [rows, many(rows)].map((lives): FittedLife => {
      const found: FittedLife | { readonly kind: "refused" } = estimate(lives, { confidence: 0.95, minimumEvents: 1 });
      if (found.kind === "refused") throw new Error("no fit");
      return found;
    });
    if (one === undefined || all === undefined) throw new Error("no fit");
    expectClose(Math.exp(all.core.peak.m), Math.exp(one.core.peak.m), 1e-9);
    expectClose(Math.exp(all.core.peak.s), Math.exp(one.core.peak.s), 1e-9);
    expectClose(all.logLikelihood, times * one.logLikelihood, 1e-11);
    expectClose(times * all.core.covariance.mm, one.core.covariance.mm, 1e-7);
    if (one.family === "exponential") return;
    expectClose(times * all.core.covariance.ss, one.core.covariance.ss, 1e-7);
    // A profile over so many lives is a parabola: its limits are those of the standard error.
    const shape = all.family === "weibull" ? all.shape : all.family === "lognormal" ? all.spread : undefined;
    if (shape === undefined || shape.profile.low === "unbounded" || shape.profile.high === "unbounded") return;
    const arm = Math.log(shape.profile.high / shape.profile.low) / 2 / 1.959963984540054;
    expectClose(arm, shape.logStandardError, 0.01);
  });
});
