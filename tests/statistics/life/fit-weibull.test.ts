import { describe, expect, test } from "vitest";
import { failureAge } from "@/lib/statistics/life/failure-age";
import { fitExponential } from "@/lib/statistics/life/fit-exponential";
import { fitLognormal } from "@/lib/statistics/life/fit-lognormal";
import { fitWeibull, type WeibullFit } from "@/lib/statistics/life/fit-weibull";
import type { FitSource } from "@/lib/statistics/life/life-sample";
import { likelihoodRatioTest } from "@/lib/statistics/life/likelihood-ratio-test";
import { weibullMoments } from "@/lib/statistics/life/weibull-moments";
import { ageFlows } from "@/lib/statistics/survival/age-flows";
import type { LifeRow } from "@/lib/statistics/survival/life-rows";
import { expectClose, expectPrinted, oneFromR } from "../../reference/read-reference";
import { madeUpLives } from "../survival/made-up-lives";
import {
  ballBearings,
  bearingCages,
  generatorFans,
  macs,
  rescaled,
  rossi,
  stoppedTest,
} from "../survival/reference-lives";
import { alphaParticles, heatExchanger, turbineWheels } from "./reference-inspections";

const options = { confidence: 0.95, minimumEvents: 1 } as const;

function fitted(source: FitSource): WeibullFit {
  const fit = fitWeibull(source, options);
  if (fit.kind !== "fitted") throw new Error(`expected a fit, got ${fit.reason}`);
  return fit;
}

describe("printed examples", () => {
  // NIST/SEMATECH e-Handbook 8.4.1.3: estimates, log-likelihood, AIC and moments read; Wald limits recomputed in R.
  test("a test stopped at 500 h, 10 of 20 failed", () => {
    const { shape, scale, logLikelihood, aic } = fitted(stoppedTest());
    const lognormal = fitLognormal(stoppedTest(), options);
    const moments = weibullMoments({ shape: shape.value, scale: scale.value });
    expectPrinted("W01", {
      eta: scale.value,
      beta: shape.value,
      loglik: logLikelihood,
      aic,
      lognormal_aic: lognormal.kind === "fitted" ? lognormal.aic : Number.NaN,
      mean: moments.mean,
      sd: moments.standardDeviation,
      eta_lo: scale.wald.low,
      eta_hi: scale.wald.high,
      beta_lo: shape.wald.low,
      beta_hi: shape.wald.high,
    });
  });

  // Abernethy et al. 1983; Meeker & Escobar 1998, chapter 8: counts read, estimates remembered, shape limits recomputed.
  test("6 failures among 1703 units: the age at 10 % failed has a likelihood-ratio interval", () => {
    const fit = fitted(bearingCages());
    const b10 = failureAge(fit, { fraction: 0.1, confidence: 0.95, interval: "profile" });
    expectPrinted("W02", {
      units: fit.lives,
      failures: fit.events,
      beta: fit.shape.value,
      eta: fit.scale.value,
      b10: b10.age,
      b10_lr_lo: Number(b10.low),
      b10_lr_hi: Number(b10.high),
      beta_lo: fit.shape.wald.low,
      beta_hi: fit.shape.wald.high,
    });
    // The note of the case: the Wald interval [1489, 10235] differs twofold at the top. R 4.2.2 gives 1488.54 and 10234.45.
    const wald = failureAge(fit, { fraction: 0.1, confidence: 0.95, interval: "delta" });
    expect(Number(wald.low)).toBeCloseTo(1488.54, 2);
    expect(Number(wald.high)).toBeCloseTo(10234.45, 2);
  });

  // Nelson 1982 (diesel generator fans): counts read, Weibull estimates remembered, the rest recomputed in R. The book's
  // exponential mean is remembered as 28,701 h; these rows give 344,440 / 12 = 28,703.3 h, so the print or the copy is off.
  test("12 failures in 70 fans, and the test of a constant hazard", () => {
    const fit = fitted(generatorFans());
    const constant = fitExponential(generatorFans(), options);
    if (constant.kind !== "fitted" || constant.exact.kind !== "limits") throw new Error("expected exact limits");
    const ratio = likelihoodRatioTest({
      restricted: constant.logLikelihood,
      full: fit.logLikelihood,
      degreesOfFreedom: 1,
    });
    expectPrinted("W04", {
      n: fit.lives,
      failures: fit.events,
      total_hours: constant.mean.value * constant.events,
      beta: fit.shape.value,
      eta: fit.scale.value,
      exp_mean: constant.mean.value,
      beta_lo: fit.shape.wald.low,
      beta_hi: fit.shape.wald.high,
      exp_mean_lo_type1: constant.exact.lowStoppedByTime,
      exp_mean_hi: constant.exact.high,
      lr_exp_vs_weibull: ratio.statistic,
    });
    expect(ratio.probability).toBeCloseTo(0.825, 3);
  });

  // Lieblein & Zelen 1956; Lawless: estimates remembered, the rest recomputed in R.
  test("23 ball bearings, all failed", () => {
    const fit = fitted(ballBearings());
    const lognormal = fitLognormal(ballBearings(), options);
    if (lognormal.kind !== "fitted") throw new Error(lognormal.reason);
    expectPrinted("W05", {
      beta: fit.shape.value,
      eta: fit.scale.value,
      loglik: fit.logLikelihood,
      logn_mu: Math.log(lognormal.median.value),
      logn_sigma: lognormal.spread.value,
    });
    // By hand: without censoring they are the mean and the standard deviation (divisor n) of the log ages.
    const logs = ballBearings().map((row) => Math.log(row.exit));
    const mean = logs.reduce((sum, y) => sum + y, 0) / 23;
    expectClose(Math.log(lognormal.median.value), mean, 1e-12);
    expectClose(lognormal.spread.value, Math.sqrt(logs.reduce((sum, y) => sum + (y - mean) ** 2, 0) / 23), 1e-10);
  });

  // Meeker & Escobar 1998 data; recomputed in R survreg, no printed estimate found.
  test("heat-exchanger tubes: left-, interval- and right-censored", () => {
    const { shape, scale, logLikelihood } = fitted(heatExchanger());
    expectPrinted("W08", {
      beta: shape.value,
      eta: scale.value,
      loglik: logLikelihood,
      beta_lo: shape.wald.low,
      beta_hi: shape.wald.high,
    });
  });

  // Nelson 1982 data; recomputed in R survreg.
  test("turbine wheels, each inspected once", () => {
    const { lives, shape, scale, logLikelihood } = fitted(turbineWheels());
    expectPrinted("W10", { wheels: lives, beta: shape.value, eta: scale.value, loglik: logLikelihood });
  });
});

// R 4.2.2, survival 3.5.3: survreg for censored lives, the likelihood maximised directly for late entry.
describe.each([
  ["nist", stoppedTest],
  ["bearing cage", bearingCages],
  ["genfan", generatorFans],
  ["ball bearings", ballBearings],
  ["heat exchanger", heatExchanger],
  ["turbine wheel", turbineWheels],
  ["alpha 20", () => alphaParticles(20)],
  ["alpha 10220", () => alphaParticles(10220)],
  ["rossi late entry", rossi],
  ["macs", macs],
])("%s agrees with R", (caseName, rows) => {
  test("scale, shape and log-likelihood to 1e-6", () => {
    const fit = fitted(rows());
    expectClose(fit.scale.value, Math.exp(oneFromR(`${caseName} weibull`, "location")), 1e-6);
    expectClose(fit.shape.value, 1 / oneFromR(`${caseName} weibull`, "spread"), 1e-6);
    expectClose(fit.logLikelihood, oneFromR(`${caseName} weibull`, "log_likelihood"), 1e-9);
  });
});

test.each([
  ["nist", stoppedTest],
  ["bearing cage", bearingCages],
  ["heat exchanger", heatExchanger],
])("%s: standard errors agree with R", (caseName, rows) => {
  const fit = fitted(rows());
  expectClose(fit.scale.logStandardError ** 2, oneFromR(`${caseName} weibull`, "location_variance"), 1e-6);
  expectClose(fit.shape.logStandardError ** 2, oneFromR(`${caseName} weibull`, "log_spread_variance"), 1e-6);
});

test.each([
  ["profile bearing cage", bearingCages],
  ["profile genfan", generatorFans],
])("%s: profile limits agree with a brute-force search in R", (caseName, rows) => {
  const { shape, scale } = fitted(rows());
  expectClose(Number(shape.profile.low), 1 / oneFromR(caseName, "spread_high"), 1e-6);
  expectClose(Number(shape.profile.high), 1 / oneFromR(caseName, "spread_low"), 1e-6);
  expectClose(Number(scale.profile.low), oneFromR(caseName, "scale_low"), 1e-6);
  expectClose(Number(scale.profile.high), oneFromR(caseName, "scale_high"), 1e-6);
});

test("the unit of age does not matter: hours or millionths of a century give one shape", () => {
  const hours = fitted(generatorFans());
  for (const factor of [1e-9, 1 / 24, 1e9]) {
    const other = fitted(rescaled(generatorFans(), factor));
    expectClose(other.shape.value, hours.shape.value, 1e-9);
    expectClose(other.scale.value, hours.scale.value * factor, 1e-9);
    expectClose(Number(other.shape.profile.high), Number(hours.shape.profile.high), 1e-8);
  }
});

// By definition: rows, single lives and flows say the same.
test("grouped rows, single lives and flows give one fit", () => {
  const rows = madeUpLives(300).filter((row) => row.exit > 0);
  const single = rows.flatMap((row) => Array.from({ length: row.count }, () => ({ ...row, count: 1 })));
  const expected = fitted(rows);
  for (const source of [single, ageFlows(rows)]) {
    const fit = fitted(source);
    expectClose(fit.shape.value, expected.shape.value, 1e-12);
    expectClose(fit.scale.value, expected.scale.value, 1e-12);
    expectClose(Number(fit.scale.profile.high), Number(expected.scale.profile.high), 1e-9);
  }
});

/** Weibull log-likelihood of single rows, written out: shares no code with the fitted one. */
function logLikelihoodOf(rows: readonly LifeRow[], shape: number, scale: number): number {
  return rows.reduce((sum, { entry, exit, event, count }) => {
    const lived = (exit / scale) ** shape - (entry / scale) ** shape;
    const hazard = event ? Math.log((shape / scale) * (exit / scale) ** (shape - 1)) : 0;
    return sum + count * (hazard - lived);
  }, 0);
}

// By definition: the likelihood written out, falling away from the fit on every side.
test("no step away from the fit is better, with late entry", () => {
  const rows = madeUpLives(300).filter((row) => row.exit > 0);
  const { shape, scale, logLikelihood } = fitted(rows);
  expectClose(logLikelihoodOf(rows, shape.value, scale.value), logLikelihood, 1e-12);
  for (const [up, over] of [
    [1e-3, 0],
    [-1e-3, 0],
    [0, 1e-3],
    [0, -1e-3],
    [7e-4, 7e-4],
    [7e-4, -7e-4],
  ] as const) {
    expect(logLikelihoodOf(rows, shape.value * (1 + up), scale.value * (1 + over))).toBeLessThan(logLikelihood);
  }
});

describe("hard cases", () => {
  const life = (entry: number, exit: number, event: boolean, count = 1): LifeRow => ({ entry, exit, event, count });
  const refusal = (source: FitSource, minimumEvents = 1) => {
    const fit = fitWeibull(source, { confidence: 0.95, minimumEvents });
    return fit.kind === "refused" ? fit.reason : fit.kind;
  };

  test("the reasons for having no fit are named", () => {
    expect(refusal([])).toBe("no-exposure");
    expect(refusal([life(0, 0, false, 4)])).toBe("no-exposure");
    expect(refusal([life(0, 90, false, 1000)])).toBe("no-events");
    expect(refusal(generatorFans(), 13)).toBe("too-few-events");
    expect(refusal(generatorFans(), 12)).toBe("fitted");
    expect(refusal([life(0, 0, true), life(0, 9, true, 3)])).toBe("failure-at-age-zero");
  });

  test("a likelihood without a peak is refused, not guessed", () => {
    expect(refusal([life(0, 365, true, 1_000_000)])).toBe("flat-likelihood");
    expect(refusal([life(0, 365, true, 5), life(0, 100, false, 50)])).toBe("flat-likelihood");
    // One inspection age says what share failed by then, and nothing about the shape.
    const once = { entry: 0, after: 0, by: 12, count: 30 };
    expect(refusal([once, { entry: 0, after: 12, by: Number.POSITIVE_INFINITY, count: 70 }])).toBe("flat-likelihood");
    expect(refusal([{ entry: 0, after: 10, by: 20, count: 30 }])).toBe("flat-likelihood");
    expect(refusal([once])).toBe("flat-likelihood");
  });

  test("one failure with survivors beyond it has a fit, and its limits may be unbounded", () => {
    const fit = fitted([life(0, 500, true), life(0, 1000, false, 99)]);
    expect(fit.events).toBe(1);
    expect(fit.shape.value).toBeGreaterThan(0);
    expect(Number(fit.shape.profile.low)).toBeLessThan(fit.shape.value);
    expect(fit.scale.profile.high === "unbounded" || fit.scale.profile.high > 1e5).toBe(true);
  });

  test("a million failures at one age among survivors of another", () => {
    const fit = fitted([life(0, 300, true, 1_000_000), life(0, 600, false, 1_000_000)]);
    expectClose(fit.shape.value, shapeOfTwoAges(), 1e-9);
  });

  test("a failure at age 0 counts as within the first day when the caller says so", () => {
    const rows = [life(0, 0, true, 2), life(0, 40, true, 3), life(0, 90, false, 20)];
    const fit = fitWeibull(rows, { ...options, failedAtZero: { within: 1 } });
    const bounded = fitted([
      { entry: 0, after: 0, by: 1, count: 2 },
      { entry: 0, after: 40, by: 40, count: 3 },
      { entry: 0, after: 90, by: Number.POSITIVE_INFINITY, count: 20 },
    ]);
    if (fit.kind !== "fitted") throw new Error(fit.reason);
    expectClose(fit.shape.value, bounded.shape.value, 1e-12);
    expect(fit.events).toBe(5);
  });

  test("a late entrant alone in its risk set adds only the time it was watched", () => {
    const fit = fitted([life(0, 10, true, 4), life(0, 20, false, 6), life(100, 130, true), life(100, 140, false)]);
    const rows = [life(0, 10, true, 4), life(0, 20, false, 6), life(100, 130, true), life(100, 140, false)];
    expectClose(logLikelihoodOf(rows, fit.shape.value, fit.scale.value), fit.logLikelihood, 1e-12);
  });

  // Recovery: quantiles of the true life at evenly spaced fractions, so the fit must come out near the truth.
  test.each([0.1, 0.5, 3, 10, 40])("shape %d is found", (shape) => {
    const rows = Array.from({ length: 2000 }, (_, i) =>
      life(0, 700 * (-Math.log1p(-(i + 0.5) / 2000)) ** (1 / shape), true),
    );
    const fit = fitted(rows);
    expectClose(fit.shape.value, shape, 0.01);
    expectClose(
      Number(fit.shape.profile.high) / fit.shape.value,
      fit.shape.value / Number(fit.shape.profile.low),
      0.01,
    );
  });

  test("a caller's mistake names the argument", () => {
    expect(() => fitWeibull([life(0, 3, true)], { confidence: 1, minimumEvents: 1 })).toThrow(
      "confidence must lie strictly",
    );
    expect(() => fitWeibull([life(0, 3, true)], { confidence: 0.9, minimumEvents: 0 })).toThrow(
      "minimumEvents must be",
    );
    expect(() => fitWeibull([{ entry: 0, after: 5, by: 3, count: 1 }], options)).toThrow(
      "rows[0].by must not be below its after 5; it is 3",
    );
  });
});

/**
 * By hand. With half failed at 1 and half lost at 2 (in units of 300), the slope in the shape b is
 * 1/b − 2^b log 2 / (1 + 2^b); its root by halving.
 */
function shapeOfTwoAges(): number {
  let [low, high] = [0.01, 50];
  for (let i = 0; i < 100; i++) {
    const b = (low + high) / 2;
    if (1 / b > (2 ** b * Math.log(2)) / (1 + 2 ** b)) low = b;
    else high = b;
  }
  return low;
}
