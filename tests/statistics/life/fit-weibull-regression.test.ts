import { describe, expect, test } from "vitest";
import { fitWeibull } from "@/lib/statistics/life/fit-weibull";
import { fitWeibullRegression, type RegressedLife } from "@/lib/statistics/life/fit-weibull-regression";
import { expectClose, expectPrinted, fromR, oneFromR, referenceRows } from "../../reference/read-reference";
import { rossi } from "../survival/reference-lives";

const names = ["fin", "age", "race", "wexp", "mar", "paro", "prio"] as const;
const options = { confidence: 0.95, minimumEvents: 1 } as const;

const releases = (lateEntry: boolean): RegressedLife[] =>
  referenceRows("rossi_left_truncated").map((row) => ({
    entry: lateEntry ? Number(row.start) : 0,
    exit: Number(row.week),
    event: row.arrest === "1",
    count: 1,
    covariates: names.map((name) => Number(row[name])),
  }));

function fitted(rows: readonly RegressedLife[]) {
  const fit = fitWeibullRegression(rows, options);
  if (fit.kind !== "fitted") throw new Error(fit.reason);
  return fit;
}

// Rossi et al. 1980 with an artificial entry time: coefficients and errors read (made with R package eha, stored in the
// tests of lifelines), log-likelihood and the fit without covariates recomputed. The print stops 1e-6 short of the top.
test("late-entry regression of 432 releases", () => {
  const fit = fitted(releases(true));
  const plain = fitWeibull(rossi(), options);
  if (plain.kind !== "fitted") throw new Error(plain.reason);
  expectPrinted("W11", {
    ...Object.fromEntries(names.map((name, i) => [name, fit.coefficients[i]?.value ?? Number.NaN])),
    intercept: fit.intercept.value,
    log_shape: fit.logShape.value,
    loglik: fit.logLikelihood,
    max_gradient_under_1e6: fit.largestSlope < 1e-6 ? 1 : 0,
    se_fin: fit.coefficients[0]?.standardError ?? Number.NaN,
    se_intercept: fit.intercept.standardError,
    se_log_shape: fit.logShape.standardError,
    nocov_eta: plain.scale.value,
    nocov_beta: plain.shape.value,
    nocov_loglik: plain.logLikelihood,
  });
});

// R 4.2.2, survival 3.5.3, survreg on the same rows without late entry.
test("right-censored regression agrees with R survreg", () => {
  const fit = fitted(releases(false));
  const estimates = [fit.intercept, ...fit.coefficients];
  fromR("rossi regression", "coefficient").forEach(({ value }, i) => {
    expectClose(estimates[i]?.value ?? 0, value, 1e-6);
  });
  fromR("rossi regression", "standard_error").forEach(({ value }, i) => {
    expectClose([...estimates, fit.logShape][i]?.standardError ?? 0, value, 1e-6);
  });
  expectClose(Math.exp(-fit.logShape.value), oneFromR("rossi regression", "spread"), 1e-6);
  expectClose(fit.logLikelihood, oneFromR("rossi regression", "log_likelihood"), 1e-10);
});

describe("hard cases", () => {
  test("without covariates it is the plain Weibull fit", () => {
    const fit = fitted(rossi().map((row) => ({ ...row, covariates: [] })));
    const plain = fitWeibull(rossi(), options);
    if (plain.kind !== "fitted") throw new Error(plain.reason);
    expectClose(Math.exp(fit.intercept.value), plain.scale.value, 1e-9);
    expectClose(Math.exp(fit.logShape.value), plain.shape.value, 1e-9);
  });

  test("a covariate in another unit changes its coefficient only by that unit, and the unit of age only the intercept", () => {
    const days = releases(true).map((row) => ({
      ...row,
      entry: row.entry * 7,
      exit: row.exit * 7,
      covariates: row.covariates.map((x, i) => (i === 1 ? x * 365.25 : x)),
    }));
    const [here, there] = [fitted(releases(true)), fitted(days)];
    expectClose((there.coefficients[1]?.value ?? 0) * 365.25, here.coefficients[1]?.value ?? 0, 1e-8);
    expectClose(there.intercept.value, here.intercept.value + Math.log(7), 1e-9);
    expectClose(there.coefficients[0]?.value ?? 0, here.coefficients[0]?.value ?? 0, 1e-8);
  });

  test("a covariate that repeats another, or never varies, cannot be told apart and is refused", () => {
    const twice = releases(true).map((row) => ({
      ...row,
      covariates: [row.covariates[1] ?? 0, 2 * (row.covariates[1] ?? 0)],
    }));
    expect(fitWeibullRegression(twice, options)).toMatchObject({ kind: "refused", reason: "flat-likelihood" });
    const constant = releases(true).map((row) => ({ ...row, covariates: [3] }));
    expect(fitWeibullRegression(constant, options)).toMatchObject({ kind: "refused", reason: "flat-likelihood" });
  });

  test("refusals and mistakes are named", () => {
    expect(fitWeibullRegression([], options)).toMatchObject({ reason: "no-exposure" });
    expect(fitWeibullRegression(releases(true), { ...options, minimumEvents: 115 })).toMatchObject({
      reason: "too-few-events",
      events: 114,
    });
    const ragged = releases(true).map((row, i) => (i === 5 ? { ...row, covariates: [1] } : row));
    expect(() => fitWeibullRegression(ragged, options)).toThrow("rows[5].covariates must be 7 finite numbers");
  });
});
