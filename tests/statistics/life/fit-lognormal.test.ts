import { describe, expect, test } from "vitest";
import { failureProbability } from "@/lib/statistics/life/failure-probability";
import { fitLognormal, type LognormalFit } from "@/lib/statistics/life/fit-lognormal";
import type { FitSource } from "@/lib/statistics/life/life-sample";
import { expectClose, oneFromR } from "../../reference/read-reference";
import { ballBearings, bearingCages, generatorFans, macs, rossi, stoppedTest } from "../survival/reference-lives";
import { alphaParticles, heatExchanger, turbineWheels } from "./reference-inspections";

function fitted(source: FitSource): LognormalFit {
  const fit = fitLognormal(source, { confidence: 0.95, minimumEvents: 1 });
  if (fit.kind !== "fitted") throw new Error(fit.reason);
  return fit;
}

// R 4.2.2, survival 3.5.3: survreg for censored lives, the likelihood maximised directly for late entry.
describe.each([
  ["nist", stoppedTest],
  ["bearing cage", bearingCages],
  ["genfan", generatorFans],
  ["ball bearings", ballBearings],
  ["heat exchanger", heatExchanger],
  ["turbine wheel", turbineWheels],
  ["alpha 200", () => alphaParticles(200)],
  ["rossi late entry", rossi],
  ["macs", macs],
])("%s agrees with R", (caseName, rows) => {
  test("median, spread and log-likelihood to 1e-6", () => {
    const fit = fitted(rows());
    expectClose(Math.log(fit.median.value), oneFromR(`${caseName} lognormal`, "location"), 1e-6);
    expectClose(fit.spread.value, oneFromR(`${caseName} lognormal`, "spread"), 1e-6);
    expectClose(fit.logLikelihood, oneFromR(`${caseName} lognormal`, "log_likelihood"), 1e-9);
  });
});

test.each([
  ["nist", stoppedTest],
  ["genfan", generatorFans],
  ["turbine wheel", turbineWheels],
])("%s: errors agree with R", (caseName, rows) => {
  const fit = fitted(rows());
  expectClose(fit.median.logStandardError ** 2, oneFromR(`${caseName} lognormal`, "location_variance"), 1e-6);
  expectClose(fit.spread.logStandardError ** 2, oneFromR(`${caseName} lognormal`, "log_spread_variance"), 1e-6);
});

// By definition: the profile at its limits lies half a chi-square quantile (3.841459 / 2) below the top.
test("profile limits of the spread sit where the best likelihood has dropped by 1.92", () => {
  const fit = fitted(generatorFans());
  const top = fit.core.peak.slopes.value;
  for (const spread of [fit.spread.profile.low, fit.spread.profile.high]) {
    const values = Array.from(
      { length: 4001 },
      (_, i) => fit.core.likelihood(fit.core.peak.m - 2 + i / 500, Math.log(Number(spread))).value,
    );
    expect(top - Math.max(...values)).toBeCloseTo(3.841458820694124 / 2, 4);
  }
});

test("failure probabilities: half by the median, and the limits enclose the estimate", () => {
  const fit = fitted(generatorFans());
  const half = failureProbability(fit, { age: fit.median.value, confidence: 0.95, interval: "profile" });
  expect(half.probability).toBeCloseTo(0.5, 12);
  for (const interval of ["profile", "delta"] as const) {
    const { probability, low, high } = failureProbability(fit, { age: 3000, confidence: 0.95, interval });
    expect(low).toBeGreaterThan(0);
    expect(low).toBeLessThan(probability);
    expect(high).toBeGreaterThan(probability);
    expect(high).toBeLessThan(1);
  }
});
