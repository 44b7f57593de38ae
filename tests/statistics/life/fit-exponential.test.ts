import { describe, expect, test } from "vitest";
import { failureAge } from "@/lib/statistics/life/failure-age";
import { failureProbability } from "@/lib/statistics/life/failure-probability";
import { type ExponentialFit, fitExponential } from "@/lib/statistics/life/fit-exponential";
import type { FitSource } from "@/lib/statistics/life/life-sample";
import { expectClose, expectPrinted, oneFromR } from "../../reference/read-reference";
import { bearingCages, generatorFans, macs, stoppedTest } from "../survival/reference-lives";
import { alphaParticles, heatExchanger, turbineWheels } from "./reference-inspections";

const options = { confidence: 0.95, minimumEvents: 1 } as const;

function fitted(source: FitSource): ExponentialFit {
  const fit = fitExponential(source, options);
  if (fit.kind !== "fitted") throw new Error(fit.reason);
  return fit;
}

// Berkson 1966; Meeker & Escobar 1998, chapter 7: remembered, recomputed in R.
test("alpha particles between inspection times: likelihood-ratio limits for samples of 200 and 10220", () => {
  const [small, large] = [fitted(alphaParticles(200)), fitted(alphaParticles(10220))];
  expectPrinted("W06", {
    n200_theta: small.mean.value,
    n200_se: small.mean.value * small.mean.logStandardError,
    n200_lr_lo: Number(small.mean.profile.low),
    n200_lr_hi: Number(small.mean.profile.high),
    n10220_theta: large.mean.value,
    n10220_se: large.mean.value * large.mean.logStandardError,
    n10220_lr_lo: Number(large.mean.profile.low),
    n10220_lr_hi: Number(large.mean.profile.high),
  });
  expect(small.exact).toEqual({ kind: "failures-bounded" });
});

// R 4.2.2, survival 3.5.3, survreg.
describe.each([
  ["nist", stoppedTest],
  ["bearing cage", bearingCages],
  ["genfan", generatorFans],
  ["heat exchanger", heatExchanger],
  ["turbine wheel", turbineWheels],
  ["alpha 20", () => alphaParticles(20)],
  ["alpha 2000", () => alphaParticles(2000)],
])("%s agrees with R", (caseName, rows) => {
  test("mean, its error and log-likelihood", () => {
    const fit = fitted(rows());
    expectClose(Math.log(fit.mean.value), oneFromR(`${caseName} exponential`, "location"), 1e-8);
    expectClose(fit.mean.logStandardError ** 2, oneFromR(`${caseName} exponential`, "location_variance"), 1e-6);
    expectClose(fit.logLikelihood, oneFromR(`${caseName} exponential`, "log_likelihood"), 1e-9);
  });
});

// By hand: time watched over failures, whoever entered late.
test("with late entry the mean is the time watched per failure", () => {
  const watched = macs().reduce((sum, { entry, exit }) => sum + exit - entry, 0);
  expectClose(fitted(macs()).mean.value, watched / 27, 1e-12);
});

// By definition: 2 T / θ is chi-square; likelihood-ratio limits solve 2 r (T/rθ − 1 − log T/rθ) = 3.8415.
test("the likelihood-ratio limits of complete data solve their equation", () => {
  const { mean, events } = fitted(generatorFans());
  for (const limit of [mean.profile.low, mean.profile.high]) {
    const ratio = mean.value / Number(limit);
    expect(2 * events * (ratio - 1 - Math.log(ratio))).toBeCloseTo(3.841458820694124, 8);
  }
});

// By hand: an age is −log(1 − fraction) means, a probability 1 − exp(−age / mean); both are monotone in the mean.
test("ages and probabilities carry the limits of the mean", () => {
  const fit = fitted(generatorFans());
  const b10 = failureAge(fit, { fraction: 0.1, confidence: 0.95, interval: "profile" });
  expectClose(b10.age, -Math.log(0.9) * fit.mean.value, 1e-12);
  expectClose(Number(b10.low), -Math.log(0.9) * Number(fit.mean.profile.low), 1e-9);
  const failed = failureProbability(fit, { age: 5000, confidence: 0.95, interval: "profile" });
  expectClose(failed.probability, 1 - Math.exp(-5000 / fit.mean.value), 1e-12);
  expectClose(failed.high, 1 - Math.exp(-5000 / Number(fit.mean.profile.low)), 1e-9);
});

test("refusals are named, and all failed by the first look has no mean", () => {
  expect(fitExponential([{ entry: 0, after: 0, by: 3, count: 9 }], options)).toMatchObject({
    reason: "flat-likelihood",
  });
  expect(fitExponential([{ entry: 0, exit: 3, event: false, count: 9 }], options)).toMatchObject({
    reason: "no-events",
    lives: 9,
  });
  expect(fitExponential([{ entry: 0, exit: 3, event: true, count: 9 }], options)).toMatchObject({ kind: "fitted" });
});
