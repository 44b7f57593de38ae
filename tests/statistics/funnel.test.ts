import { expect, test } from "vitest";
import { dispersedFunnelLimits, ratioScores } from "@/lib/statistics/multiplicity/dispersed-funnel-limits";
import { poissonFunnelLimit } from "@/lib/statistics/multiplicity/funnel-limits";
import { overDispersion, sampleQuantile } from "@/lib/statistics/multiplicity/over-dispersion";
import { expectClose, expectPrinted } from "@/tests/reference/read-reference";
import { namedValues } from "@/tests/reference/read-table";

// Spiegelhalter (2005), Statistics in Medicine 24: method; the counts were recomputed in R (qpois), no print found.
test("H07: exact funnel limits", () => {
  const results = [5, 10, 20, 50].flatMap((expected) =>
    [0.001, 0.025, 0.975, 0.999].map((probability) => [
      `E${expected}_${probability}`,
      poissonFunnelLimit({ expected, probability, between: "whole-counts" }),
    ]),
  );
  expectPrinted("H07", Object.fromEntries(results));
});

// By hand, mean 1: P(0) = 0.36788, P(<= 1) = 0.73576. The 0.5 limit is 1 − (0.73576 − 0.5) / 0.36788 = 0.35914.
test("interpolated limits lie below the whole count by the excess of its probability", () => {
  const limit = poissonFunnelLimit({ expected: 1, probability: 0.5, between: "interpolated" });
  expectClose(limit, 1 - (2 / Math.E - 0.5) * Math.E, 1e-12);
});

// R 4.2.2, tests/reference/distributions.R, by the formulas of the papers.
test("over-dispersion agrees with R", () => {
  const z = [-3.1, -0.4, 0.2, 0.9, 1.6, 2.2, -1.2, 5.4, 0.1, -0.8, 3.3, -2.4];
  const groups = z.map((score, i) => ({ z: score, standardError: 0.05 * (i + 1) }));
  const { factor, betweenVariance } = overDispersion({ groups, winsorShare: 0.1 });
  expectClose(factor, namedValues("distributions-from-r.csv", "dispersion.factor")[0]?.value ?? -1, 1e-12);
  expectClose(betweenVariance, namedValues("distributions-from-r.csv", "dispersion.between")[0]?.value ?? -1, 1e-12);
});

test("groups that differ as chance makes them get no extra variance", () => {
  const groups = [-1, -0.5, 0.5, 1].map((z) => ({ z, standardError: 0.2 }));
  expect(overDispersion({ groups, winsorShare: 0 })).toEqual({ factor: 0.625, betweenVariance: 0 });
  expect(sampleQuantile([1, 2, 4], 0.75)).toBe(3);
  expect(() => overDispersion({ groups, winsorShare: 0.5 })).toThrow(/winsorShare/);
});

// By hand: expected 16 has standard error 1/4 on the log scale; factor 4 doubles it, extra variance 1/2 makes it 3/4.
test("widened limits follow their model", () => {
  const dispersion = { factor: 4, betweenVariance: 0.5 };
  const z = 1.959963984540054;
  const wide = dispersedFunnelLimits({ expected: 16, confidence: 0.95, dispersion, model: "multiplicative" });
  expectClose(wide.high, Math.exp(z / 2), 1e-12);
  const added = dispersedFunnelLimits({ expected: 16, confidence: 0.95, dispersion, model: "additive" });
  expectClose(added.low, Math.exp(-0.75 * z), 1e-12);
  const narrow = { factor: 0.3, betweenVariance: 0 };
  const never = dispersedFunnelLimits({ expected: 16, confidence: 0.95, dispersion: narrow, model: "multiplicative" });
  expectClose(never.high, Math.exp(z / 4), 1e-12);
  expect(ratioScores([{ observed: 0, expected: 4 }])[0]?.z).toBeCloseTo(2 * Math.log(0.125), 12);
});
