import { describe, expect, test } from "vitest";
import { failureAge } from "@/lib/statistics/life/failure-age";
import { failureProbability } from "@/lib/statistics/life/failure-probability";
import { fitWeibull, type WeibullFit } from "@/lib/statistics/life/fit-weibull";
import { expectClose, fromR } from "../../reference/read-reference";
import { bearingCages, generatorFans, rescaled } from "../survival/reference-lives";

function fitted(rows: ReturnType<typeof generatorFans>): WeibullFit {
  const fit = fitWeibull(rows, { confidence: 0.95, minimumEvents: 1 });
  if (fit.kind !== "fitted") throw new Error(fit.reason);
  return fit;
}

const r = (caseName: string, quantity: string) => fromR(caseName, quantity)[0]?.value ?? Number.NaN;

// Brute-force search of the profile in R 4.2.2: tests/reference/survival.R.
describe.each([
  ["profile bearing cage", bearingCages],
  ["profile genfan", generatorFans],
])("%s", (caseName, rows) => {
  test("likelihood-ratio limits of the age at 10 % failed", () => {
    const { low, high } = failureAge(fitted(rows()), { fraction: 0.1, confidence: 0.95, interval: "profile" });
    expectClose(Number(low), r(caseName, "b10_low"), 1e-6);
    expectClose(Number(high), r(caseName, "b10_high"), 1e-6);
  });

  test("likelihood-ratio limits of the probability of failing by 2000 h", () => {
    const { low, high } = failureProbability(fitted(rows()), { age: 2000, confidence: 0.95, interval: "profile" });
    expectClose(low, r(caseName, "failed_by_2000_low"), 1e-6);
    expectClose(high, r(caseName, "failed_by_2000_high"), 1e-6);
  });

  test("they follow the unit of age", () => {
    const question = { fraction: 0.1, confidence: 0.95, interval: "profile" } as const;
    const [hours, years] = [
      failureAge(fitted(rows()), question),
      failureAge(fitted(rescaled(rows(), 1 / 8766)), question),
    ];
    expectClose(Number(years.high) * 8766, Number(hours.high), 1e-8);
  });

  // By definition: the delta method with derivatives taken numerically along location and log spread.
  test("delta limits of a probability are symmetric on the logit, with the right width", () => {
    const fit = fitted(rows());
    const { probability, low, high } = failureProbability(fit, { age: 2000, confidence: 0.95, interval: "delta" });
    const logit = (p: number) => Math.log(p / (1 - p));
    const { peak, covariance, sample } = fit.core;
    const at = (m: number, s: number) =>
      logit(1 - Math.exp(-Math.exp((Math.log(2000 / sample.unit) - m) / Math.exp(s))));
    const h = 1e-5;
    const dm = (at(peak.m + h, peak.s) - at(peak.m - h, peak.s)) / (2 * h);
    const ds = (at(peak.m, peak.s + h) - at(peak.m, peak.s - h)) / (2 * h);
    const error = Math.sqrt(dm * dm * covariance.mm + 2 * dm * ds * covariance.ms + ds * ds * covariance.ss);
    expectClose(logit(high) - logit(probability), 1.959963984540054 * error, 1e-6);
    expectClose(logit(probability) - logit(low), 1.959963984540054 * error, 1e-6);
  });
});

test("age and probability are each other's inverse, limits included", () => {
  const fit = fitted(generatorFans());
  const { age, high } = failureAge(fit, { fraction: 0.05, confidence: 0.9, interval: "profile" });
  expectClose(failureProbability(fit, { age, confidence: 0.9, interval: "profile" }).probability, 0.05, 1e-12);
  // Where the age limit is, the probability limit on the other side passes through the fraction.
  const there = failureProbability(fit, { age: Number(high), confidence: 0.9, interval: "profile" });
  expectClose(there.low, 0.05, 1e-7);
});

test("a caller's mistake names the argument", () => {
  const fit = fitted(generatorFans());
  expect(() => failureAge(fit, { fraction: 10, confidence: 0.9, interval: "delta" })).toThrow(
    "fraction must lie strictly",
  );
  expect(() => failureProbability(fit, { age: 0, confidence: 0.9, interval: "delta" })).toThrow(
    "age must be a finite number above 0",
  );
});
